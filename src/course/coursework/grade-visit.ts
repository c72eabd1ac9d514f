import { alikeTo } from '../../engine/diagnose/alike.ts';
import { begin, type Entry, go, type Visit } from '../../engine/diagnose/replay.ts';
import { type Search, searchOn, startSearch } from '../../engine/diagnose/search.ts';
import { isGrave } from '../callouts/trial.ts';
import { type Marked, type Posed, reasonOf, refused } from './source.ts';
import type { Work } from './work.ts';

/** A visit of more acts is not followed: nobody needs so many, and each takes milliseconds. */
export const MOST_FOLLOWED = 500;

/** What is still possible at one point of a visit, and after each act that has followed there. */
interface Step {
  readonly search: Search;
  readonly next: Map<string, Step>;
}

/** What many visits to one callout share, worked out when it is first asked for. */
interface Ready {
  /** Ids of the fault and of all that nothing can tell from it. */
  same?: ReadonlySet<string>;
  start?: Step;
  /** How many steps are kept. */
  steps: number;
}

/** Visits to one callout begin alike, and the beginning takes longest: so many steps of it are kept, some megabytes. */
const MOST_STEPS = 60;

const shared = new WeakMap<Posed, Ready>();

function readyFor(posed: Posed): Ready {
  const ready = shared.get(posed) ?? { steps: 0 };
  shared.set(posed, ready);
  return ready;
}

function sameAs(posed: Posed): ReadonlySet<string> {
  const ready = readyFor(posed);
  const { bench, callout, candidates, alike } = posed;
  ready.same ??= new Set(
    [callout.fault, ...(alike ?? alikeTo(bench, callout.wires, callout.fault, candidates))].map(
      ({ id }) => id,
    ),
  );
  return ready.same;
}

function startOf(posed: Posed): Step {
  const ready = readyFor(posed);
  ready.start ??= { search: startSearch(posed.bench, posed.callout, posed.candidates), next: new Map() };
  return ready.start;
}

/** After the same acts at the same callout everything stands the same. */
function stepAfter(posed: Posed, { search, next }: Step, entry: Entry): Step {
  const act = JSON.stringify(entry.act);
  const known = next.get(act);
  if (known) return known;
  const fresh: Step = { search: searchOn(posed.bench, search, entry), next: new Map() };
  if (readyFor(posed).steps++ < MOST_STEPS) next.set(act, fresh);
  return fresh;
}

/** Whether the entries of a visit rule out everything but these candidates. */
function settles(posed: Posed, entries: readonly Entry[], same: ReadonlySet<string>): boolean {
  const isSettled = ({ search }: Step) => search.worlds.every(({ candidate }) => same.has(candidate.id));
  let step = startOf(posed);
  for (const entry of entries) {
    // Nothing that was ruled out comes back.
    if (isSettled(step)) return true;
    step = stepAfter(posed, step, entry);
  }
  return isSettled(step);
}

/**
 * Grades a visit by playing it again: right when the fault is named, or one that nothing tells from it, when the readings
 * rule everything else out, and when no breach is grave. What the page tells besides (the best route, what each test was
 * worth) is left out: it takes long and changes no mark.
 */
export function gradeVisit(
  posed: Posed,
  { acts, said }: Pick<Extract<Work, { kind: 'visit' }>, 'acts' | 'said'>,
): Marked {
  const { bench, callout, candidates } = posed;
  const named = candidates.find(({ id }) => id === said);
  if (!named) return refused('as dealt', `Nothing that may be wrong here is called ${said.slice(0, 80)}.`);
  if (acts.length > MOST_FOLLOWED)
    return refused('as dealt', `The visit has ${acts.length} acts; at most ${MOST_FOLLOWED} are followed.`);
  let visit: Visit = begin(bench, callout);
  for (const [k, act] of acts.entries()) {
    try {
      visit = go(bench, callout, visit, act);
    } catch (error) {
      return refused('as dealt', `Act ${k + 1} of the visit cannot be done: ${reasonOf(error)}.`);
    }
  }
  const breaches = visit.entries.flatMap((entry) => entry.breaches);
  const grave = breaches.find(isGrave);
  const same = sameAs(posed);
  const isNamed = same.has(said);
  const proved = isNamed && settles(posed, visit.entries, same);
  return {
    right: isNamed && proved && !grave,
    made: 'as dealt',
    rules: [],
    notes: [
      ...(isNamed ? [] : [`It was said: ${named.says}. It was: ${callout.fault.says}.`]),
      ...(isNamed && !proved ? ['The readings taken leave other faults possible.'] : []),
      ...(grave ? [`A breach of safe working: ${grave}.`] : []),
    ],
    breaches,
    ...(isNamed && { proved }),
  };
}
