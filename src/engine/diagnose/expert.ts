import { type Act, perform } from './act.ts';
import { branchesOf, gainOf } from './answers.ts';
import type { Bench } from './bench.ts';
import type { Callout } from './callout.ts';
import type { Candidate } from './candidate.ts';
import { consistent, type Outcome, type Test } from './evidence.ts';
import { isolationActs } from './isolation.ts';
import {
  type Allowed,
  FEW,
  type Mover,
  makeMover,
  type Option,
  type Options,
  optionsFrom,
  priceOf,
  stageOf,
} from './options.ts';
import { begin, go, type Visit } from './replay.ts';
import { energised, type Setup } from './setup.ts';
import { changes } from './situations.ts';
import { sharing } from './symptom.ts';
import { coversOn } from './tests.ts';
import { follow, sameCircuit, type World } from './world.ts';
import { NOTHING, sample, worthOf } from './worth.ts';

export { type Expected, expected } from './expected.ts';
export type { Allowed, Options } from './options.ts';

/** What a good engineer does next: acts in their order (none, or controls, safe isolation, covers), then a test. */
export interface Step {
  readonly acts: readonly Act[];
  readonly test: Test;
  /** Of the acts and the test, in the unit of `costs`. */
  readonly cost: number;
  /** Bits that the test is expected to tell. */
  readonly gain: number;
  /** About the most candidates that any answer would leave. */
  readonly most: number;
}

/** The step that tells most for its cost; undefined when no step tells these worlds apart. */
export function nextStep(
  bench: Bench,
  setup: Setup,
  worlds: readonly World[],
  options: Options = {},
): Step | undefined {
  return stepsFrom(setup, worlds, options.allow ?? 'live', makeMover(bench))[0]?.();
}

/** Steps that tell something, the best first, each made up when asked for. */
function stepsFrom(setup: Setup, worlds: readonly World[], allow: Allowed, move: Mover): (() => Step)[] {
  if (worlds.length < 2) return [];
  const some = sample(worlds);
  const among = some.map((_, k) => k);
  const stage = stageOf(setup);
  const telling = (thorough: boolean) =>
    optionsFrom(setup, some, allow, move, thorough)
      .map((option) => {
        const gain = gainOf(option, among);
        return { option, gain, worth: worthOf(gain, priceOf(stage, option), worlds.length) };
      })
      .filter(({ gain }) => gain > NOTHING);
  const usual = telling(false);
  const found = usual.length > 0 || worlds.length > FEW ? usual : telling(true);
  return found
    .sort((x, y) => y.worth - x.worth)
    .map(({ option, gain }) => () => {
      const share = Math.max(...branchesOf(option, among).map(({ left }) => left.length)) / some.length;
      const acts = actsTo(setup, option, allow);
      const cost = [...acts, { do: 'test', test: option.test } as const].reduce(
        ({ now, sum }, act) => {
          const done = perform(now, act);
          return { now: done.next, sum: sum + done.cost };
        },
        { now: setup, sum: 0 },
      ).sum;
      return { acts, test: option.test, cost, gain, most: Math.ceil(share * worlds.length) };
    });
}

/** The acts that lead to an option without a breach. */
function actsTo(setup: Setup, { phase, inputs, test }: Option, allow: Allowed): Act[] {
  const covers = coversOn(setup, test).map((part): Act => ({ do: 'open', part }));
  const acts: Act[] = [];
  const isolate = phase === 'dead' || covers.length > 0;
  if (isolate) acts.push(...isolationActs(setup), ...covers);
  const now = acts.reduce((at, act) => perform(at, act).next, setup);
  if (now.inputs === inputs) return acts;
  const on = !energised(now) && energised({ ...now, inputs });
  // Covers go on again before the supply does, unless somebody may test live and has tested dead before.
  const close = on && (allow !== 'live' || !now.everProved) ? [...now.open] : [];
  acts.push(...close.map((part): Act => ({ do: 'close', part })));
  return [...acts, { do: 'operate', settings: changes(now.system, now.inputs, inputs) }];
}

/** A step that was taken, what it showed, and how many candidates there were before and after. */
export interface Leg {
  readonly step: Step;
  readonly outcome: Outcome;
  readonly before: number;
  readonly after: number;
}

/** A whole visit by a good engineer. */
export interface Route {
  readonly entries: readonly Leg[];
  readonly tests: number;
  /** In the unit of `costs`. */
  readonly cost: number;
  /** What is still possible at the end; the true fault is among them. */
  readonly left: readonly Candidate[];
}

/** Plays the good engineer against the true fault, from arrival until nothing tells more. */
export function expertRoute(
  bench: Bench,
  callout: Callout,
  candidates: readonly Candidate[],
  options: Options = {},
): Route {
  return routeFrom(bench, callout, sharing(bench, candidates, callout), options);
}

/** The same from the worlds that share the symptom, on arrival. */
export function routeFrom(
  bench: Bench,
  callout: Callout,
  worlds: readonly World[],
  { allow = 'live' }: Options = {},
): Route {
  const move = makeMover(bench);
  let visit = begin(bench, callout);
  let left = worlds;
  const entries: Leg[] = [];
  for (;;) {
    const step = firstThatTells(visit, left, allow, move, entries);
    if (!step) break;
    const before = left.length;
    for (const act of step.acts) [visit, left] = on(bench, callout, visit, left, act);
    visit = go(bench, callout, visit, { do: 'test', test: step.test });
    const outcome = visit.entries.at(-1)!.outcome!;
    left = consistent(visit.setup, left, { test: step.test, outcome });
    entries.push({ step, outcome, before, after: left.length });
  }
  const cost = entries.reduce((sum, { step }) => sum + step.cost, 0);
  return { entries, tests: entries.length, cost, left: left.map(({ candidate }) => candidate) };
}

/** The best step that has not just been taken to no effect. */
function firstThatTells(
  { setup }: Visit,
  left: readonly World[],
  allow: Allowed,
  move: Mover,
  entries: readonly Leg[],
): Step | undefined {
  const idle = entries.slice(entries.findLastIndex(({ before, after }) => after < before) + 1);
  const spent = new Set(idle.map(({ step }) => JSON.stringify(step.test)));
  for (const make of stepsFrom(setup, left, allow, move)) {
    const step = make();
    if (!spent.has(JSON.stringify(step.test))) return step;
  }
  return undefined;
}

/** The visit and what is possible after one act. */
function on(
  bench: Bench,
  callout: Callout,
  visit: Visit,
  left: readonly World[],
  act: Act,
): [Visit, readonly World[]] {
  const next = go(bench, callout, visit, act);
  if (sameCircuit(visit.setup, next.setup)) return [next, left];
  return [next, left.map((world) => follow(bench, next.setup, world))];
}
