import { gzipSync } from 'node:zlib';
import lunr from 'lunr';
import { describe, expect, it } from 'vitest';
import { pack, unpack } from '../../src/files/search-pack.ts';
import { loadCallouts } from '../../src/files/site/callouts.ts';
import { loadLessons } from '../../src/files/site/lessons.ts';
import { plainText } from '../../src/files/site/plainText.ts';
import { loadQuizzes } from '../../src/files/site/quizzes.ts';
import { buildSearch, type SearchFile, searchEntries } from '../../src/files/site/searchIndex.ts';
import { sectionsOf } from '../../src/files/site/sections.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { calculatorEntries } from '../../src/ui/calc/entries.ts';
import { addressOf, wordsFound } from '../../src/ui/search/address.ts';
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

  it('finds every callout by its title, and tells nothing of its fault', () => {
    const callouts = loadCallouts();
    for (const { id, title } of callouts) {
      const found = find(title).slice(0, 4);
      expect(found.map(({ entry }) => entry.to)).toContain(`/callouts/${id}/`);
    }
    const shown = JSON.stringify(searchEntries().filter(({ kind }) => kind === 'Callout'));
    for (const { after } of callouts) expect(shown).not.toContain(after.slice(0, 40));
  });

  it.each(['fault finding', 'diagnosis', 'breakdown'])('leads “%s” to the callouts', (words) => {
    expect(
      find(words)
        .slice(0, 6)
        .map(({ entry }) => entry.to),
    ).toContain('/callouts/');
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

  it('finds an objective by what the learner can do, in its lesson', () => {
    const tried = loadLessons().flatMap(({ slug, objectives }) => objectives.map(({ says }) => [slug, says]));
    expect(tried.length).toBeGreaterThan(20);
    for (const [slug, says = ''] of tried)
      expect(
        find(says)
          .slice(0, 3)
          .map(({ entry }) => entry.to),
        says,
      ).toContain(`/lessons/${slug}/#aims`);
  });

  it('leads to the heading of a lesson that its words stand under', () => {
    const headed = searchEntries().filter(({ kind, to }) => kind === 'Lesson' && to.includes('#'));
    expect(headed.length).toBeGreaterThan(20);
    for (const { of, title, to } of headed.slice(0, 20))
      expect(
        find(`${title} ${of}`).map(({ entry }) => entry.to),
        title,
      ).toContain(to);
  });

  it('finds the steps of a procedure in the lesson that prints them', () => {
    const quizzes = loadQuizzes().filter(({ procedure }) => procedure);
    const printed = loadLessons().flatMap(({ body }) =>
      [...body.matchAll(/<Steps[^>]*quiz="([^"]+)"/g)].map(([, id]) => id),
    );
    const shown = quizzes.filter(({ id }) => printed.includes(id));
    expect(shown.length).toBeGreaterThan(0);
    const texts = searchEntries().map(({ text }) => text);
    for (const { procedure, title } of shown) {
      const [step] = procedure?.steps ?? [];
      expect(
        texts.some((text) => text.includes(step?.says ?? 'no step')),
        title,
      ).toBe(true);
    }
  });

  it('takes at most 200 kB to fetch, gzipped', () => {
    const file = JSON.stringify(buildSearch([...searchEntries(), ...calculatorEntries()]));
    expect(gzipSync(file, { level: 9 }).length).toBeLessThanOrEqual(200_000);
  });

  it('forgives one wrong letter', () => {
    expect(first('tundich')).toBe('Tundish');
  });

  it('finds a lesson by what it says', () => {
    const found = find('race').map(({ entry }) => `${entry.of}: ${entry.title}`);
    expect(found.some((says) => says.includes('Follow the call'))).toBe(true);
  });

  it.each(['', '   ', '-', '+*:~^', '"'])('finds nothing, and does not fail, for “%s”', (words) => {
    expect(find(words)).toEqual([]);
  });

  it('lists every entry at an address of its own', () => {
    const addresses = searchEntries().map(({ to }) => to);
    expect(new Set(addresses).size).toBe(addresses.length);
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

describe('a lesson cut at its headings', () => {
  it('keeps what stands before the first one, and gives each the anchor that its page has', () => {
    // Anchors as the Markdown processor of the site makes them: github-slugger 2.0.0, tried on these headings.
    const cut = sectionsOf(
      'One.\n\n## What’s *live*, at 60 °C?\n\nTwo.\n\n### Two-port\n\n## Two-port\n\nThree.',
    );
    expect(cut.map(({ anchor }) => anchor)).toEqual(['', 'whats-live-at-60-c', 'two-port', 'two-port-1']);
    expect(cut.map(({ heading }) => heading)).toEqual(['', 'What’s live, at 60 °C?', 'Two-port', 'Two-port']);
    expect(cut.map(({ body }) => body.trim())).toEqual(['One.', 'Two.', '', 'Three.']);
  });
});

describe('a packed index', () => {
  it('finds what the index that it was made from finds, in the same order', () => {
    const index = lunr(function () {
      this.ref('at');
      this.field('title', { boost: 10 });
      this.field('text');
      searchEntries().forEach(({ title, text }, at) => {
        this.add({ at: String(at), title, text });
      });
    });
    const again = lunr.Index.load(unpack(pack(index.toJSON())));
    for (const words of ['tundish', 'valve', 'orange live', 'room thermostat', 'nothinglikeit']) {
      const [before, after] = [index.search(words), again.search(words)];
      expect(after.map(({ ref }) => ref).toSorted()).toEqual(before.map(({ ref }) => ref).toSorted());
      expect(after[0]?.ref).toBe(before[0]?.ref);
    }
  });
});

describe('the address of a result', () => {
  const entry = {
    kind: 'Lesson' as const,
    to: '/lessons/a/#b',
    title: 'Valves',
    also: '',
    text: 'The valve. A coil.',
  };

  it('carries the words it was found by, before its place in the page', () => {
    expect(addressOf({ entry, stems: new Set(['valv']) })).toBe('/lessons/a/?hl=valves+valve#b');
  });

  it('is that of the page alone where no word of it can be shown', () => {
    expect(addressOf({ entry: { ...entry, to: '/lessons/a/' }, stems: new Set(['pump']) })).toBe(
      '/lessons/a/',
    );
  });

  it('carries six words at most', () => {
    const text = 'one two three four five six seven eight';
    const stems = new Set(text.split(' ').map((word) => String(lunr.stemmer(new lunr.Token(word, {})))));
    expect(wordsFound({ entry: { ...entry, title: '', text }, stems })).toHaveLength(6);
  });
});
