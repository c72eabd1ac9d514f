import { describe, expect, it } from 'vitest';
import { plainText } from '../../src/files/site/plainText.ts';
import { buildSearch, type SearchFile, searchEntries } from '../../src/files/site/searchIndex.ts';
import { excerpt, highlight } from '../../src/ui/search/highlight.ts';
import { finder } from '../../src/ui/search/query.ts';

// Through text and back, as the browser gets it.
const find = finder(JSON.parse(JSON.stringify(buildSearch(searchEntries()))) as SearchFile);
const first = (words: string) => find(words)[0]?.entry.title;

describe('the search', () => {
  it.each([
    ['Y-plan', 'Three-port mid-position system'],
    ['y plan', 'Three-port mid-position system'],
    ['yplan', 'Three-port mid-position system'],
    ['S-plan', 'Two-port system'],
    ['W-plan', 'Three-port priority system'],
    ['C-plan', 'Gravity system with a two-port'],
    ['cylinder stat', 'Cylinder thermostat'],
    ['permanent live', 'Permanent line'],
  ])('finds what the trade calls “%s” under its descriptive name', (nickname, title) => {
    expect(first(nickname)).toBe(title);
  });

  it('finds a word from its beginning', () => {
    expect(first('tund')).toBe('Tundish');
  });

  it('forgives one wrong letter', () => {
    expect(first('tundich')).toBe('Tundish');
  });

  it('finds a lesson by what it says', () => {
    expect(find('race').map(({ entry }) => entry.title)).toContain('Follow the call');
  });

  it.each(['', '   ', '-', '+*:~^', '"'])('finds nothing, and does not fail, for “%s”', (words) => {
    expect(find(words)).toEqual([]);
  });

  it('lists every entry at an address of its own', () => {
    const addresses = searchEntries().map(({ to }) => to);
    expect(new Set(addresses).size).toBe(addresses.length);
  });

  it('does without jobs when there are none yet', () => {
    expect(searchEntries('/no/such/folder')).toEqual([]);
  });
});

describe('the marks in a result', () => {
  it('mark every form of the word that was found', () => {
    const marked = highlight('The valve and two valves', new Set(['valv'])).filter(({ hit }) => hit);
    expect(marked.map(({ text }) => text)).toEqual(['valve', 'valves']);
  });

  it('lose no letter of the text', () => {
    const text = 'Rests at 60 °C, “open”: the two-port.';
    expect(
      highlight(text, new Set())
        .map((part) => part.text)
        .join(''),
    ).toBe(text);
  });

  it('stay in sight in a cut text', () => {
    const long = `${'word '.repeat(200)}tundish ${'more '.repeat(200)}`;
    const cut = excerpt(long, new Set(['tundish']));
    expect(cut).toContain('tundish');
    expect(cut.length).toBeLessThan(190);
  });
});

describe('the plain text of a lesson', () => {
  it('keeps the words and drops tags, addresses and marks', () => {
    expect(
      plainText('<Try>\nA **bold** [coil](/glossary/#coil)?\n</Try>\n\n| A | B |\n|---|---|\n| c | d |'),
    ).toBe('A bold coil? A B c d');
  });
});
