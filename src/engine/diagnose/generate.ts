import { makeRandom, type Random } from '../model/random.ts';
import type { Settings } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { alikeGroups } from './alike.ts';
import type { Bench } from './bench.ts';
import type { Callout } from './callout.ts';
import type { Candidate } from './candidate.ts';
import { type Difficulty, difficultyFrom, type Level } from './difficulty.ts';
import { routeFrom } from './expert.ts';
import { activeSettings, suppliesOn } from './situations.ts';
import { complaintsOf, type Family, familyOf, sharing } from './symptom.ts';

export { type Difficulty, difficultyOf, type Level } from './difficulty.ts';

export interface Generated {
  readonly callout: Callout;
  readonly family: Family;
  readonly difficulty: Difficulty;
  /** Candidates, besides the fault, that nothing tells from it. */
  readonly alike: readonly Candidate[];
}

/** So many faults are tried before a seed is given up. */
const TRIES = 40;

/** The harder, the less a customer tells: two or three things, at the third level one or two. */
const told = (level: Level, random: Random): number => (level === 3 ? 1 : 2) + random.int(2);

/** Two faults at once. */
const isDouble = ({ failures, misplaced, strays }: Candidate): boolean =>
  failures.length + misplaced.length + strays.length > 1;

/** Faults by kind, so that a kind comes up as often however many there are of it: parts fail more often than wires (common practice). */
function kindsOf(candidates: readonly Candidate[], level: Level): Candidate[][] {
  const singles = candidates.filter((one) => !isDouble(one));
  const failed = singles.filter(({ failures: [one] }) => one && 'part' in one);
  const broken = singles.filter(({ failures: [one] }) => one && 'wire' in one);
  const landed = singles.filter(({ misplaced, strays }) => misplaced.length + strays.length > 0);
  const doubles = level === 3 ? candidates.filter(isDouble) : [];
  return [failed, failed, broken, landed, doubles].filter((kind) => kind.length > 0);
}

/**
 * A callout of a level by its seed: the same for the same seed. Undefined when none of the faults that the seed deals
 * shows a symptom, is of the level, and can be settled by the tests that a visit allows.
 */
export function makeCallout(
  bench: Bench,
  wires: readonly Wire[],
  candidates: readonly Candidate[],
  seed: number,
  level: Level,
): Generated | undefined {
  const random = makeRandom(Math.imul(seed, 3) + level);
  const kinds = kindsOf(candidates, level);
  if (kinds.length === 0) return undefined;
  /** Levels by symptom: many faults share one. */
  const known = new Map<string, Level>();
  for (let tries = 0; tries < TRIES; tries++) {
    const callout = deal(bench, wires, random.pick(random.pick(kinds)), random, level);
    if (!callout) continue;
    const key = `${isDouble(callout.fault)} ${JSON.stringify([callout.complaints, callout.found])}`;
    if ((known.get(key) ?? level) !== level) continue;
    const worlds = sharing(bench, candidates, callout);
    const difficulty = difficultyFrom(bench, callout, worlds);
    known.set(key, difficulty.level);
    if (difficulty.level !== level) continue;
    const { left } = routeFrom(bench, callout, worlds);
    if (alikeGroups(bench, wires, left).length > 1) continue;
    const alike = left.filter(({ id }) => id !== callout.fault.id);
    return { callout, family: familyOf(callout), difficulty, alike };
  }
  return undefined;
}

/** A callout with a fault, or undefined when nobody would notice it. */
function deal(
  bench: Bench,
  wires: readonly Wire[],
  fault: Candidate,
  random: Random,
  level: Level,
): Callout | undefined {
  const { system } = bench;
  const seed = random.int(1 << 30);
  const complaints = complaintsOf(bench, wires, fault, random.int(1 << 30), told(level, random));
  const [first] = complaints;
  if (!first) return undefined;
  // Left as it was when the fault was noticed, or put back to rest.
  const rest: Settings = activeSettings(system, suppliesOn(system));
  const found = random.pick([first.settings, first.settings, rest]);
  return { system, wires, fault, complaints, found, seed };
}
