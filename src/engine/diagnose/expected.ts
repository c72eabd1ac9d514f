import { branchesOf, gainOf } from './answers.ts';
import type { Bench } from './bench.ts';
import type { Callout } from './callout.ts';
import {
  makeMover,
  type Option,
  type Options,
  optionsFrom,
  priceOf,
  type Stage,
  stageAfter,
  stageOf,
} from './options.ts';
import { arrive } from './setup.ts';
import type { World } from './world.ts';
import { NOTHING, sample, worthOf } from './worth.ts';

/** What a good engineer is expected to need, averaged over what shares the symptom. */
export interface Expected {
  readonly tests: number;
  /** In the unit of `costs`. */
  readonly cost: number;
  /** Candidates left at the end; 1 when all are settled. */
  readonly left: number;
}

/**
 * Expected over the worlds that share the symptom, on arrival; at most 64 of them are looked at. What a test shows under
 * some settings is taken as if they had been set on arrival, so that every test is worked out once.
 */
export function expected(
  bench: Bench,
  { system, wires, found }: Pick<Callout, 'system' | 'wires' | 'found'>,
  worlds: readonly World[],
  { allow = 'live' }: Options = {},
): Expected {
  const setup = arrive(system, wires, found);
  const some = sample(worlds);
  const options = optionsFrom(setup, some, allow, makeMover(bench));
  return from(
    some.map((_, k) => k),
    stageOf(setup),
    options,
  );
}

/** Goes on with the best option until none tells more. */
function from(among: readonly number[], stage: Stage, options: readonly Option[]): Expected {
  const done = { tests: 0, cost: 0, left: among.length };
  if (among.length < 2) return done;
  let best: { option: Option; worth: number } | undefined;
  const useful: Option[] = [];
  for (const option of options) {
    const gain = gainOf(option, among);
    if (gain <= NOTHING) continue;
    useful.push(option);
    const worth = worthOf(gain, priceOf(stage, option), among.length);
    if (
      (!best || worth > best.worth) &&
      branchesOf(option, among).every(({ left }) => left.length < among.length)
    ) {
      best = { option, worth };
    }
  }
  if (!best) return done;
  const { option } = best;
  const { own, entry } = priceOf(stage, option);
  const next = stageAfter(stage, option);
  const sum = { tests: 1, cost: own + entry, left: 0 };
  for (const { left, share } of branchesOf(option, among)) {
    const rest = from(left, next, useful);
    sum.tests += share * rest.tests;
    sum.cost += share * rest.cost;
    sum.left += share * rest.left;
  }
  return sum;
}
