import { positionOf } from '../model/system.ts';
import type { Bench } from './bench.ts';
import type { Candidate } from './candidate.ts';
import type { Memo } from './cluster.ts';
import { type Instrument, probe, type Shown, sameReading } from './instrument.ts';
import { partDoes, partNumber, warmth } from './look.ts';
import type { Setup } from './setup.ts';
import type { Done } from './visit.ts';
import { enter, follow, refuse, type Stand, type World } from './world.ts';

/** A question put to the system as it stands. */
export type Test =
  /** Does this part work: does the boiler fire, does the pump run? */
  | { readonly kind: 'works'; readonly part: string }
  /** Does this coil, or these radiators, get warm? */
  | { readonly kind: 'warms'; readonly part: string }
  /** Where does this valve stand? */
  | { readonly kind: 'stands'; readonly part: string }
  /** What does the instrument show between these two terminals? */
  | { readonly kind: 'reads'; readonly instrument: Instrument; readonly between: readonly [string, string] };

export type Outcome = Shown | string;

/** A question and its answer. */
export interface Observation {
  readonly test: Test;
  readonly outcome: Outcome;
}

/**
 * What a test shows wherever the system stands. Throws an Error for an unknown part or terminal. `memo` is for many tests
 * under one setup.
 */
export function ask(setup: Setup, test: Test, memo: Memo = new Map()): (stand: Stand) => Outcome {
  const { system } = setup;
  if (test.kind === 'reads') return probe(setup, test.instrument, test.between, memo);
  if (test.kind === 'warms') return warmth(system, test.part);
  const part = partNumber(system, test.part);
  if (test.kind === 'works') return (stand) => partDoes(stand, part);
  return (stand) => positionOf(system, system.parts[part]!, stand.place);
}

/** What a test shows where the system stands so: see `ask`. */
export const outcomeAt = (setup: Setup, stand: Stand, test: Test): Outcome => ask(setup, test)(stand);

/** Whether two outcomes of one test are the same answer. */
export const sameOutcome = (test: Test, x: Outcome, y: Outcome): boolean =>
  test.kind === 'reads' && typeof x !== 'string' && typeof y !== 'string'
    ? sameReading(test.instrument, x, y)
    : x === y;

/**
 * The worlds that an observation leaves possible, each with only those ways to stand that agree with it. The true
 * candidate is never lost. The order is kept; what is not touched is the same object.
 */
export function consistent(setup: Setup, worlds: readonly World[], { test, outcome }: Observation): World[] {
  const shows = ask(setup, test);
  return worlds.flatMap((world) => {
    const stands = world.stands.filter((stand) => sameOutcome(test, outcome, shows(stand)));
    if (stands.length === 0) return [];
    return stands.length === world.stands.length ? [world] : [{ ...world, stands }];
  });
}

/** Every candidate as it may stand on arrival. */
export const enterAll = (bench: Bench, setup: Setup, candidates: readonly Candidate[]): World[] =>
  candidates.map((candidate) => enter(bench, setup, candidate));

/** Every world after an action. */
export const followAll = (bench: Bench, { next, newFuse }: Done, worlds: readonly World[]): World[] =>
  worlds.map((world) => (newFuse ? refuse : follow)(bench, next, world));
