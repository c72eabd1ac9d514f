import type { Act } from './act.ts';
import { alikeTo } from './alike.ts';
import { answersOf, branchesOf } from './answers.ts';
import type { Bench } from './bench.ts';
import type { Breach } from './breach.ts';
import type { Callout } from './callout.ts';
import type { Candidate } from './candidate.ts';
import type { Test } from './evidence.ts';
import { expected, nextStep, type Route, routeFrom, type Step } from './expert.ts';
import { partNumber } from './look.ts';
import { begin, type Entry, go, standOf, type Visit } from './replay.ts';
import { type Search, searchOn, startSearch } from './search.ts';
import type { Setup } from './setup.ts';
import { nextTests } from './strategy.ts';
import { costOf, coversOn } from './tests.ts';
import type { World } from './world.ts';
import { sample } from './worth.ts';

/** What one test of a visit told. */
export interface Told {
  /** Its number among the entries of the visit. */
  readonly entry: number;
  /** Candidates that were possible before it and after it. */
  readonly before: number;
  readonly after: number;
  /** Some that it ruled out, from all over the list. */
  readonly ruledOut: readonly Candidate[];
  /** A step for no more cost that would have come clearly nearer to halving them, and the most that it could have left. */
  readonly better?: { readonly step: Step; readonly most: number };
}

/** How a visit was done, and whether what was said at its end is right and shown. */
export interface Verdict {
  /** It is the fault, or one that nothing can tell from it. */
  readonly right: boolean;
  /** Candidates, besides the fault, that nothing can tell from it. */
  readonly alike: readonly Candidate[];
  /** What else explains all that was seen: not the fault, and not alike it. */
  readonly left: readonly Candidate[];
  /** Right, and nothing else is left. */
  readonly proved: boolean;
  /** Looks and readings taken; those of the dead test are not counted. */
  readonly tests: number;
  /** Of all that was done, in the unit of `costs`. */
  readonly cost: number;
  /** What a good engineer is expected to need where no more is known than on arrival. */
  readonly best: { readonly tests: number; readonly cost: number };
  readonly breaches: readonly { readonly entry: number; readonly breach: Breach }[];
  /** Ids of parts changed that had not failed. */
  readonly needless: readonly string[];
  /** One for each test, in order. */
  readonly trail: readonly Told[];
  /** The shortest sound route: how a good engineer finds this fault. */
  readonly route: Route;
}

/** A test tells clearly more than another from so many bits on: with one, half as many candidates are left. */
const CLEARLY = 0.25;
/** So many of those that a test ruled out are named. */
const NAMED = 4;

/**
 * Judges a visit by playing it again. `candidates` is everything that may be wrong, the true fault among it; `said` is
 * what the learner says it is. Throws an Error for acts that the system does not allow for: see `perform`.
 */
export function judgeVisit(
  bench: Bench,
  callout: Callout,
  candidates: readonly Candidate[],
  acts: readonly Act[],
  said: Candidate,
): Verdict {
  const { fault, wires } = callout;
  const start = startSearch(bench, callout, candidates);
  let search = start;
  let visit = begin(bench, callout);
  const trail: Told[] = [];
  const needless = new Set<string>();
  acts.forEach((act, k) => {
    const before = search;
    if (act.do === 'swap' && !hadFailed(visit, act.part)) needless.add(act.part);
    visit = go(bench, callout, visit, act);
    const entry = visit.entries[k]!;
    search = searchOn(bench, before, entry);
    if (act.do === 'test') trail.push(told(bench, before, search, k, act.test));
  });
  const { entries } = visit;
  const possible = search.worlds.map(({ candidate }) => candidate);
  const alike = alikeTo(bench, wires, fault, candidates);
  const same = new Set([fault, ...alike].map(({ id }) => id));
  const left = possible.filter(({ id }) => !same.has(id));
  const { tests, cost } = expected(bench, callout, start.worlds);
  return {
    right: same.has(said.id),
    alike,
    left,
    proved: same.has(said.id) && left.length === 0,
    tests: trail.length,
    cost: sumOf(entries),
    best: { tests, cost },
    breaches: entries.flatMap(({ breaches }, entry) => breaches.map((breach) => ({ entry, breach }))),
    needless: [...needless],
    trail,
    route: routeFrom(bench, callout, start.worlds),
  };
}

/** What a test told: `before` and `after` are the searches on either side of its entry. */
function told(bench: Bench, before: Search, after: Search, entry: number, test: Test): Told {
  const kept = new Set(after.worlds.map(({ candidate }) => candidate));
  const gone = before.worlds.map(({ candidate }) => candidate).filter((one) => !kept.has(one));
  const better = betterThan(bench, before, test);
  return {
    entry,
    before: before.worlds.length,
    after: after.worlds.length,
    ruledOut: sample(gone, NAMED),
    ...(better && { better }),
  };
}

/** A step that comes clearly nearer to halving what is left than a test does, and costs no more; undefined when there is none. */
function betterThan(bench: Bench, { setup, worlds }: Search, test: Test): Told['better'] {
  const cost = costOf(setup, test);
  const [own] = nextTests(setup, worlds, [test]);
  const enough = (own?.gain ?? 0) + CLEARLY;
  const isBetter = (one: { cost: number; gain: number }) => one.cost <= cost && one.gain >= enough;
  const [now] = nextTests(setup, worlds)
    .filter((one) => isBetter(one) && coversOn(setup, one.test).length === 0)
    .sort((a, b) => b.gain - a.gain || a.cost - b.cost);
  if (now) return { step: { acts: [], ...now }, most: mostLeft(setup, worlds, now.test) };
  // Nothing costs less than a look: another step needs to be thought of for a reading only.
  const step = test.kind === 'reads' ? nextStep(bench, setup, worlds) : undefined;
  return step && isBetter(step) ? { step, most: step.most } : undefined;
}

/** The most candidates that any answer to a test would leave. */
function mostLeft(setup: Setup, worlds: readonly World[], test: Test): number {
  const among = worlds.map((_, k) => k);
  const branches = answersOf(setup, worlds, [test]).flatMap((answers) => branchesOf(answers, among));
  return Math.max(...branches.map(({ left }) => left.length));
}

const sumOf = (entries: readonly Entry[]): number => entries.reduce((sum, { cost }) => sum + cost, 0);

/** Whether a part wants changing as the visit stands: it has failed and is not renewed yet, or it is a fuse that has blown. */
function hadFailed(visit: Visit, id: string): boolean {
  const { system, renewed } = visit.setup;
  const part = partNumber(system, id);
  const { failures } = visit.truth.candidate;
  const failed = !renewed.has(id) && failures.some((one) => 'part' in one && one.part === part);
  return failed || (system.parts[part]!.kind.supply !== undefined && standOf(visit).blown);
}
