import type { Bench } from '../../engine/diagnose/bench.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import { type Generated, makeCallout } from '../../engine/diagnose/generate.ts';
import type { Family } from '../../engine/diagnose/symptom.ts';
import type { Layout, RightWiring } from '../layout.ts';
import { makeRandom, type Random, seedOf } from '../random.ts';
import type { Level } from '../task.ts';
import type { CalloutAddress } from './address.ts';

/** A callout made from a seed, and the wiring that it is about. */
export interface MadeCallout extends Generated {
  readonly wiring: RightWiring;
}

/** So many seeds are tried on each level; where a level has none, the nearest that has one is taken. */
const TRIES = 12;
const NEAREST: Readonly<Record<Level, readonly Level[]>> = { 1: [1, 2, 3], 2: [2, 1, 3], 3: [3, 2, 1] };

/** The wiring that a made callout is about: one of the right ones, by its seed. */
export const wiringOfSeed = ({ right }: Layout, seed: number): RightWiring => makeRandom(seed).pick(right);

/** So many seeds are tried for a callout of one family. */
const FAMILY_TRIES = 16;

/**
 * The seed of a made callout of a family; undefined when none of the seeds dealt leads to one.
 * @param candidatesOf everything that may be wrong with a wiring
 */
export function seedOfFamily(
  layout: Layout,
  bench: Bench,
  candidatesOf: (wiring: RightWiring) => readonly Candidate[],
  family: Family,
  level: Level,
  random: Random,
): number | undefined {
  for (let attempt = 0; attempt < FAMILY_TRIES; attempt++) {
    const seed = random.int(2 ** 32);
    const candidates = candidatesOf(wiringOfSeed(layout, seed));
    if (madeCallout(layout, bench, candidates, { seed, level }).family === family) return seed;
  }
  return undefined;
}

/**
 * The callout of an address, the same every time: `difficulty.level` says of which level it is.
 * @param bench of the layout's system
 * @param candidates everything that may be wrong with the wiring that `wiringOfSeed` names
 * @throws RangeError when the system gives no callout at all
 */
export function madeCallout(
  layout: Layout,
  bench: Bench,
  candidates: readonly Candidate[],
  { seed, level }: Pick<Extract<CalloutAddress, { kind: 'made' }>, 'seed' | 'level'>,
): MadeCallout {
  const wiring = wiringOfSeed(layout, seed);
  for (const near of NEAREST[level]) {
    const { int } = makeRandom(seedOf(`${layout.id}/${seed}/${near}`));
    for (let attempt = 0; attempt < TRIES; attempt++) {
      const made = makeCallout(bench, wiring.wires, candidates, int(2 ** 32), near);
      if (made) return { ...made, wiring };
    }
  }
  throw new RangeError(`expected a system that a callout can be made of, found "${layout.id}"`);
}
