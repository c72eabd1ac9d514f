import { describe, expect, it } from 'vitest';
import { familyOf } from '../../src/engine/diagnose/symptom.ts';
import type { CalloutFile } from '../../src/files/callout.ts';
import { complaintsIn } from '../../src/files/callout-pack.ts';
import { loadCallouts, loadDoubleFaults } from '../../src/files/site/callouts.ts';
import { loadShelf } from '../../src/files/site/course.ts';
import { loadGlossary } from '../../src/files/site/glossary.ts';
import { sentencesOf, wordsOf } from '../../src/files/site/prose.ts';
import { gradeOf } from './support/grade.ts';
import { everyday, inGlossary, isKnown, rareWords } from './support/rare-words.ts';

/** That the engine agrees with each callout, `npm run check` sees. Here: what they are like as texts and as a set. */
const callouts = loadCallouts();
const shelf = loadShelf();

/** What stands in the house of anybody who rings up, though films seldom name it and the glossary explains it. */
const household = new Set(['boiler', 'radiator', 'fuse', 'rail']);
/** Words with a capital that name nobody. */
const capitals = new Set(['I', 'V', 'A', 'C']);
const calendar =
  /^(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day$|^(January|February|March|April|May|June|July|August|September|October|November|December)$/;

const repeated = (items: readonly string[]) => items.filter((one, k) => items.indexOf(one) !== k);
const proseOf = ({ customer, house, after }: CalloutFile) => [customer, house, after].flatMap(sentencesOf);
const share = (items: readonly string[], most: number) =>
  [...Map.groupBy(items, (one) => one).values()].every((some) => some.length <= most * items.length);

describe('the authored callouts', () => {
  it('are 30 at least, and every system has one', () => {
    expect(callouts.length).toBeGreaterThanOrEqual(30);
    const covered = new Set(callouts.map(({ system }) => system));
    expect(shelf.layoutIds.filter((id) => !covered.has(id))).toEqual([]);
  });

  it('come more than once for the systems that are met most', () => {
    for (const id of ['three-port', 'unvented-three-port', 'two-two-ports', 'combi-one-zone', 'two-zones']) {
      expect(callouts.filter(({ system }) => system === id).length, id).toBeGreaterThan(1);
    }
  });

  it('spread over at least six families of complaint, none of them half of all', () => {
    const families = callouts.map((one) =>
      familyOf({ system: shelf.layout(one.system).system, complaints: complaintsIn(one) }),
    );
    expect(new Set(families).size).toBeGreaterThanOrEqual(6);
    expect(share(families, 0.5)).toBe(true);
  });

  it('spread over the three levels and over every way to be wrong', () => {
    for (const level of [1, 2, 3])
      expect(callouts.filter((one) => one.level === level).length, `level ${level}`).toBeGreaterThanOrEqual(
        4,
      );
    const ways = callouts.map(({ fault }) =>
      fault.length > 1 ? 'double' : Object.keys(fault[0] ?? {}).join(),
    );
    expect(new Set(ways)).toEqual(new Set(['fail', 'break', 'landed', 'swap', 'link', 'double']));
    expect(share(ways, 0.6)).toBe(true);
  });

  it('are no two alike: each has its own title, its own fault and its own words', () => {
    expect(repeated(callouts.map(({ title }) => title))).toEqual([]);
    expect(repeated(callouts.map(({ system, fault }) => `${system} ${JSON.stringify(fault)}`))).toEqual([]);
    expect(repeated(callouts.flatMap(({ customer, house }) => sentencesOf(`${customer} ${house}`)))).toEqual(
      [],
    );
  });
});

describe.each(callouts.map((callout) => [callout.title, callout] as const))('“%s”', (_, callout) => {
  const { customer, house, after, found, system } = callout;

  it('is written for a reading age of about 12, with no sentence of more than 25 words', () => {
    for (const part of [customer, house, after])
      expect(gradeOf(sentencesOf(part)), part).toBeLessThanOrEqual(6.5);
    expect(proseOf(callout).filter((sentence) => wordsOf(sentence).length > 25)).toEqual([]);
  });

  it('lets the customer speak without a word of the trade', () => {
    const said = sentencesOf(customer);
    const trade = rareWords(said).filter((word) => !isKnown(word, household) && !isKnown(word, everyday));
    expect(trade).toEqual([]);
    const terms = loadGlossary()
      .flatMap(({ term, also }) => [term, ...also])
      .filter((term) => term.includes(' '));
    expect(terms.filter((term) => new RegExp(`\\b${term}\\b`, 'i').test(customer))).toEqual([]);
  });

  it('explains itself in words that the glossary has, that everybody has, or that name a part', () => {
    const { parts } = shelf.layout(system).system;
    const names = new Set(parts.flatMap(({ name }) => wordsOf(name.toLowerCase())));
    const unexplained = rareWords(sentencesOf(after)).filter(
      (word) => ![inGlossary, everyday, names].some((list) => isKnown(word, list)),
    );
    expect(unexplained).toEqual([]);
  });

  it('names no person and no firm: no capital but where a sentence, a day or a month begins', () => {
    const named = proseOf(callout).flatMap((sentence) =>
      wordsOf(sentence)
        .slice(1)
        .filter(
          (word) => /^[A-Z]/.test(word) && !calendar.test(word) && !capitals.has(word.replace(/’.*/, '')),
        ),
    );
    expect(named).toEqual([]);
  });

  it('says how to put it right with the supply isolated and proved dead', () => {
    expect(after).toMatch(/isolate/i);
    expect(after).toMatch(/lock(ed)?\b.* off/is);
    expect(after).toMatch(/prove\b.* dead/is);
  });

  it('is met with a supply on, or nothing could be seen', () => {
    const supplies = shelf
      .layout(system)
      .system.supplies.map(({ input }) => shelf.layout(system).system.inputs[input]?.id ?? '');
    expect(supplies.some((id) => found[id] === 'on')).toBe(true);
  });
});

describe('the chosen double faults', () => {
  it('say in one sentence why the two come together', () => {
    for (const { why } of loadDoubleFaults()) {
      expect(sentencesOf(why), why).toHaveLength(1);
      expect(wordsOf(why).length, why).toBeLessThanOrEqual(25);
    }
  });
});
