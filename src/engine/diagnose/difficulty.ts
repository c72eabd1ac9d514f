import type { Bench } from './bench.ts';
import type { Callout } from './callout.ts';
import type { Candidate } from './candidate.ts';
import { expected } from './expected.ts';
import { sharing } from './symptom.ts';
import type { World } from './world.ts';

/** How hard a callout is, from 1 to 3. */
export type Level = 1 | 2 | 3;

export interface Difficulty {
  /** How many candidates share the symptom. */
  readonly sharing: number;
  /** Tests that a good engineer is expected to need. */
  readonly tests: number;
  /** Their cost, with all acts, in the unit of `costs`. */
  readonly cost: number;
  readonly level: Level;
}

/** From so many points on a callout is of the second level, and of the third (assumption: each about a third of all). */
const SECOND = 9.5;
const THIRD = 13.3;

/** Points: halvings that the symptom leaves to do, and tests that doing them is expected to take. Two faults at once are always hard. */
function levelOf(sharing: number, tests: number, { failures, misplaced, strays }: Candidate): Level {
  if (failures.length + misplaced.length + strays.length > 1) return 3;
  const points = Math.log2(sharing) + tests;
  if (points < SECOND) return 1;
  return points < THIRD ? 2 : 3;
}

/** How hard a callout is, from the worlds that share its symptom on arrival: see `sharing`. */
export function difficultyFrom(bench: Bench, callout: Callout, worlds: readonly World[]): Difficulty {
  const { tests, cost } = expected(bench, callout, worlds);
  return { sharing: worlds.length, tests, cost, level: levelOf(worlds.length, tests, callout.fault) };
}

/** How hard a callout is: from how many candidates share its symptom and what a good engineer is expected to need. */
export const difficultyOf = (bench: Bench, callout: Callout, candidates: readonly Candidate[]): Difficulty =>
  difficultyFrom(bench, callout, sharing(bench, candidates, callout));
