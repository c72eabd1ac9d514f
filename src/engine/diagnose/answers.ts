import type { Memo } from './cluster.ts';
import { ask, type Outcome, sameOutcome, type Test } from './evidence.ts';
import type { Setup } from './setup.ts';
import { costOf } from './tests.ts';
import type { World } from './world.ts';

/** What one test would show with each candidate, as numbers: outcomes that are the same answer have one number. */
export interface Answers {
  readonly test: Test;
  readonly cost: number;
  /** How many different answers there are. */
  readonly kinds: number;
  /** Per world: its answers. Several where the system may stand in several ways. */
  readonly of: readonly (readonly number[])[];
}

/** Answers of each test that would tell some of the candidates apart. */
export function answersOf(setup: Setup, worlds: readonly World[], tests: readonly Test[]): Answers[] {
  const memo: Memo = new Map();
  return tests.flatMap((test) => {
    const shows = ask(setup, test, memo);
    const outcomes = worlds.map(({ stands }) => stands.map(shows));
    const number = classes(test, new Set(outcomes.flat()));
    const kinds = new Set(number.values()).size;
    if (kinds < 2) return [];
    const of = outcomes.map((some) => [...new Set(some.map((outcome) => number.get(outcome)!))]);
    return [{ test, cost: costOf(setup, test), kinds, of }];
  });
}

/** Numbers outcomes: readings nearer to each other than a meter and the mains leave open are one answer. */
function classes(test: Test, outcomes: ReadonlySet<Outcome>): Map<Outcome, number> {
  const sorted = [...outcomes].sort((x, y) =>
    typeof x === 'number' && typeof y === 'number' ? x - y : String(x) < String(y) ? -1 : 1,
  );
  const number = new Map<Outcome, number>();
  sorted.forEach((outcome, k) => {
    const before = sorted[k - 1];
    const last = before === undefined ? -1 : number.get(before)!;
    const joins = before !== undefined && sameOutcome(test, before, outcome);
    number.set(outcome, joins ? last : last + 1);
  });
  return number;
}

/** Bits that a test is expected to tell about which of these worlds (by number) is the true one, all being as likely. */
export function gainOf({ kinds, of }: Answers, among: readonly number[]): number {
  const weight = new Float64Array(kinds);
  let unsure = 0;
  for (const world of among) {
    const own = of[world]!;
    for (const answer of own) weight[answer]! += 1 / own.length;
    // A world that may answer in several ways tells less.
    unsure += Math.log2(own.length);
  }
  let bits = 0;
  for (const w of weight) if (w > 0) bits -= (w / among.length) * Math.log2(w / among.length);
  return bits - unsure / among.length;
}

/** The worlds that each answer would leave, with how likely the answer is. Answers that none gives are left out. */
export function branchesOf({ kinds, of }: Answers, among: readonly number[]) {
  return Array.from({ length: kinds }, (_, answer) => {
    const left = among.filter((world) => of[world]!.includes(answer));
    const share = left.reduce((sum, world) => sum + 1 / of[world]!.length, 0) / among.length;
    return { answer, left, share };
  }).filter(({ left }) => left.length > 0);
}
