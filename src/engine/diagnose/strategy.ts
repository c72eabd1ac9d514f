import { type Answers, answersOf, branchesOf, gainOf } from './answers.ts';
import type { Test } from './evidence.ts';
import type { Setup } from './setup.ts';
import { testsNow } from './tests.ts';
import type { World } from './world.ts';

/** A test and what it is worth. */
export interface Choice {
  readonly test: Test;
  readonly cost: number;
  /** Bits that it is expected to tell. */
  readonly gain: number;
  /** The most candidates that any answer would leave, of those looked at. */
  readonly most: number;
}

/** With more candidates than this a test is chosen by an even sample of them. What it then rules out is always exact. */
const SAMPLE = 128;
/** Sets of candidates up to this size are searched to the end. */
const EXACT = 6;
/** Bits too few to call a test worth doing. */
const NOTHING = 1e-9;

const sample = (worlds: readonly World[]): readonly World[] => {
  if (worlds.length <= SAMPLE) return worlds;
  return Array.from({ length: SAMPLE }, (_, k) => worlds[Math.floor((k * worlds.length) / SAMPLE)]!);
};

const numbers = (count: number): number[] => Array.from({ length: count }, (_, k) => k);

/** Tests that tell something, the most told for its cost first. */
export function nextTests(
  setup: Setup,
  worlds: readonly World[],
  tests: readonly Test[] = testsNow(setup),
): Choice[] {
  const some = sample(worlds);
  return choicesOf(answersOf(setup, some, tests), numbers(some.length)).sort(
    (x, y) => y.gain / y.cost - x.gain / x.cost,
  );
}

const choicesOf = (answers: readonly Answers[], among: readonly number[]): Choice[] =>
  answers
    .map((one) => ({
      test: one.test,
      cost: one.cost,
      gain: gainOf(one, among),
      most: Math.max(...branchesOf(one, among).map(({ left }) => left.length)),
    }))
    .filter(({ gain }) => gain > NOTHING);

/** The reading that comes nearest to halving the candidates, whatever it costs; undefined when no reading tells anything. */
export function halfSplit(
  setup: Setup,
  worlds: readonly World[],
  tests: readonly Test[] = testsNow(setup),
): Choice | undefined {
  const readings = tests.filter(({ kind }) => kind === 'reads');
  return nextTests(setup, worlds, readings).sort((x, y) => x.most - y.most || x.cost - y.cost)[0];
}

/** What a strategy comes to, averaged over the candidates, each as likely. */
export interface Plan {
  /** Expected number of tests. */
  readonly tests: number;
  /** Their expected cost, in the unit of `costs`. */
  readonly cost: number;
  /** Expected number of candidates left that these tests cannot tell apart; 1 when all are settled. */
  readonly left: number;
}

/**
 * The best strategy from here with these tests and nothing changed: the test that tells most for its cost, again and
 * again; sets of six or fewer are searched to the end for the least expected cost. At most `SAMPLE` candidates are
 * looked at.
 */
export function bestPlan(
  setup: Setup,
  worlds: readonly World[],
  tests: readonly Test[] = testsNow(setup),
): Plan {
  const some = sample(worlds);
  const answers = answersOf(setup, some, tests);
  const small = new Map<string, Plan>();
  return from(numbers(some.length));

  function from(among: readonly number[]): Plan {
    const useful = answers.filter((one) => gainOf(one, among) > NOTHING && splits(one, among));
    if (among.length < 2 || useful.length === 0) return { tests: 0, cost: 0, left: among.length };
    if (among.length > EXACT) {
      const worth = (one: Answers) => gainOf(one, among) / one.cost;
      return after(
        useful.reduce((best, one) => (worth(one) > worth(best) ? one : best)),
        among,
      );
    }
    const key = among.join();
    const known = small.get(key);
    if (known) return known;
    const plans = distinct(useful, among).map((one) => after(one, among));
    const best = plans.reduce((a, b) => (b.left < a.left || (b.left === a.left && b.cost < a.cost) ? b : a));
    small.set(key, best);
    return best;
  }

  function after(one: Answers, among: readonly number[]): Plan {
    const plan = { tests: 1, cost: one.cost, left: 0 };
    for (const { left, share } of branchesOf(one, among)) {
      const rest = from(left);
      plan.tests += share * rest.tests;
      plan.cost += share * rest.cost;
      plan.left += share * rest.left;
    }
    return plan;
  }
}

/** Whether every answer rules something out: else a search could ask the same for ever. */
const splits = (one: Answers, among: readonly number[]): boolean =>
  branchesOf(one, among).every(({ left }) => left.length < among.length);

/** Of tests that split these candidates alike, the cheapest. */
function distinct(answers: readonly Answers[], among: readonly number[]): Answers[] {
  const cheapest = new Map<string, Answers>();
  for (const one of answers) {
    const key = branchesOf(one, among)
      .map(({ left }) => left.join())
      .sort()
      .join('|');
    const known = cheapest.get(key);
    if (!known || one.cost < known.cost) cheapest.set(key, one);
  }
  return [...cheapest.values()];
}
