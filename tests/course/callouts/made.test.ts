import { describe, expect, test } from 'vitest';
import { madeCallout, seedOfFamily, wiringOfSeed } from '../../../src/course/callouts/made.ts';
import { customerWords } from '../../../src/course/callouts/words.ts';
import { makeRandom } from '../../../src/course/random.ts';
import type { Level } from '../../../src/course/task.ts';
import { makeBench } from '../../../src/engine/diagnose/bench.ts';
import { explains } from '../../../src/engine/diagnose/symptom.ts';
import { candidatesFor } from '../../../src/files/callout-pack.ts';
import { loadDoubleFaults } from '../../../src/files/site/callouts.ts';
import { loadShelf } from '../../../src/files/site/course.ts';

const shelf = loadShelf();
const doubles = loadDoubleFaults();
const open = (id: string) => {
  const layout = shelf.layout(id);
  const bench = makeBench(layout.system);
  const candidatesOf = ({ id: wiring }: { readonly id: string }) => candidatesFor(layout, wiring, doubles);
  const made = (seed: number, level: Level) =>
    madeCallout(layout, bench, candidatesOf(wiringOfSeed(layout, seed)), { seed, level });
  return { layout, bench, candidatesOf, made };
};

describe('A callout made from a seed', () => {
  const { layout, bench, candidatesOf, made } = open('three-port');

  test('is the same every time, with a fault that shows what the customer has noticed', () => {
    for (const seed of [1, 4_000_000_000]) {
      const { callout, wiring, family } = made(seed, 1);
      expect(made(seed, 1)).toEqual(made(seed, 1));
      expect(callout.wires).toBe(wiring.wires);
      for (const complaint of callout.complaints)
        expect(explains(bench, wiring.wires, callout.fault, complaint)).toBe(true);
      expect(customerWords(layout.system, { family, complaints: callout.complaints }, seed)).toMatch(
        /\.$|\?$/,
      );
    }
  });

  test('is about one of the right wirings, and about another for another seed', () => {
    const wirings = Array.from({ length: 30 }, (_, seed) => wiringOfSeed(layout, seed).id);
    expect(new Set(wirings)).toEqual(new Set(layout.right.map(({ id }) => id)));
  });

  test('is of the level that is asked for, where the system has faults of that level', () => {
    for (const level of [1, 2, 3] as const) expect(made(5, level).difficulty.level).toBe(level);
  });

  test('can be found for a family that is due', () => {
    const seed = seedOfFamily(layout, bench, candidatesOf, 'no-heating', 2, makeRandom(11));
    expect(seed).toBeDefined();
    expect(made(seed ?? 0, 2).family).toBe('no-heating');
  });

  test('is not looked for without end where a system has no such fault', () => {
    const small = open('combi-one-zone');
    // One zone cannot be one of several.
    expect(
      seedOfFamily(small.layout, small.bench, small.candidatesOf, 'one-zone-cold', 2, makeRandom(11)),
    ).toBeUndefined();
  });
});

test.each(['combi-one-zone', 'combi-volt-free', 'gravity-hot-water', 'twin-immersion', 'two-two-ports'])(
  'On %s a seed leads to a callout, of the level asked for or the nearest there is',
  (id) => {
    const { made } = open(id);
    for (const level of [1, 3] as const) expect(made(99, level).callout.complaints.length).toBeGreaterThan(0);
  },
);
