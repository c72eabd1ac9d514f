import { describe, expect, it } from 'vitest';
import { plainText } from '../../src/files/site/plainText.ts';
import { buildSearch, type SearchFile, searchEntries } from '../../src/files/site/searchIndex.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { excerpt, highlight } from '../../src/ui/search/highlight.ts';
import { finder } from '../../src/ui/search/query.ts';

// Through text and back, as the browser gets it.
const find = finder(JSON.parse(JSON.stringify(buildSearch(searchEntries()))) as SearchFile);
const first = (words: string) => find(words)[0]?.entry.title;

describe('the search', () => {
  it.each([
    ['cylinder stat', 'Cylinder thermostat'],
    ['permanent live', 'Permanent line'],
    ['FCU', 'Fused spur'],
  ])('finds what the trade calls “%s” under its descriptive name', (nickname, title) => {
    expect(first(nickname)).toBe(title);
  });

  it.each([
    ['Y-plan', 'Three-port mid-position system'],
    ['y plan', 'Three-port mid-position system'],
    ['yplan', 'Three-port mid-position system'],
    ['S-plan', 'Two-port system'],
    ['W-plan', 'Three-port priority system'],
    ['C-plan', 'Gravity system with a two-port'],
  ])('explains what the trade calls “%s” in the glossary', (nickname, title) => {
    expect(
      find(nickname)
        .filter(({ entry }) => entry.kind === 'Term')
        .map(({ entry }) => entry.title),
    ).toContain(title);
  });

  it.each(['Y-plan', 'y plan', 'yplan', 'S-plan', 'splan'])(
    'leads “%s” to the page of a system that is also called so',
    (nickname) => {
      const entry = find(nickname)[0]?.entry;
      expect(entry?.kind).toBe('System');
      expect(entry?.also.toLowerCase().replace(/[- ]/g, '')).toContain(
        nickname.toLowerCase().replace(/[- ]/g, ''),
      );
    },
  );

  it.each(
    systemPages().flatMap(({ spec, about }) => (about?.alsoCalled ?? []).map((name) => [name, spec.id])),
  )('finds “%s” on the page of %s', (name, id) => {
    const found = find(name ?? '').map(({ entry }) => entry);
    expect(found.slice(0, 8).map(({ to }) => to)).toContain(`/systems/${id}/`);
  });

  it.each([
    ['orange', '/parts/two-port-valve/#terminal-orange'],
    ['orange', '/parts/mid-position-valve/#terminal-orange'],
    ['SL', '/parts/boiler/#terminal-sl'],
    ['HW-OFF', '/parts/two-channel-programmer/#terminal-hw-off'],
    ['hw-on', '/parts/two-channel-programmer/#terminal-hw-on'],
    ['grey core', '/parts/two-port-valve/#terminal-grey'],
  ])('finds the terminal “%s” at %s', (words, to) => {
    expect(
      find(words)
        .slice(0, 6)
        .map(({ entry }) => entry.to),
    ).toContain(to);
  });

  it('puts the one terminal with that very name first', () => {
    expect(find('HW-OFF')[0]?.entry.title).toBe('HW-OFF on the programmer');
  });

  it('puts the layout that is called just so before those that add to the name', () => {
    expect(find('Y-plan')[0]?.entry.also.split(', ')).toContain('Y-plan');
    expect(find('S-plan')[0]?.entry.also.split(', ')).toContain('S-plan');
  });

  it('says which system a symptom belongs to', () => {
    const symptoms = searchEntries().filter(({ kind }) => kind === 'Symptom');
    expect(symptoms.length).toBeGreaterThan(50);
    for (const { of, text } of symptoms) expect(`${of} ${text}`).not.toMatch(/undefined/);
  });

  it('finds a classic mistake by what it does, at its place on the page', () => {
    const found = find('radiators hot with only hot water on').map(({ entry }) => entry);
    expect(found.slice(0, 10).some(({ kind, to }) => kind === 'Symptom' && /\/systems\/.+\/#/.test(to))).toBe(
      true,
    );
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

  it('does without content when there is none yet, and still knows the parts', () => {
    const kinds = new Set(searchEntries('/no/such/folder').map(({ kind }) => kind));
    expect([...kinds]).toEqual(['Part', 'Terminal']);
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
