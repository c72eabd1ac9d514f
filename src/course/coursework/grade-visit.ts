import { alikeTo } from '../../engine/diagnose/alike.ts';
import { begin, type Entry, go, type Visit } from '../../engine/diagnose/replay.ts';
import { type Search, searchOn, startSearch } from '../../engine/diagnose/search.ts';
import { isGrave } from '../callouts/trial.ts';
import { type Marked, type Posed, reasonOf, refused } from './source.ts';
import type { Work } from './work.ts';

/** A visit of more acts is not followed: nobody needs so many, and each takes milliseconds. */
export const MOST_FOLLOWED = 500;

/** What many visits to one callout share, worked out when it is first asked for. */
interface Ready {
  /** Ids of the fault and of all that nothing can tell from it. */
  same?: ReadonlySet<string>;
  start?: Search;
}

const shared = new WeakMap<Posed, Ready>();

function readyFor(posed: Posed): Ready {
  const ready = shared.get(posed) ?? {};
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

function startOf(posed: Posed): Search {
  const ready = readyFor(posed);
  ready.start ??= startSearch(posed.bench, posed.callout, posed.candidates);
  return ready.start;
}

/** Whether the entries of a visit rule out everything but these candidates. */
function settles(posed: Posed, entries: readonly Entry[], same: ReadonlySet<string>): boolean {
  const isSettled = ({ worlds }: Search) => worlds.every(({ candidate }) => same.has(candidate.id));
  let search = startOf(posed);
  for (const entry of entries) {
    // Nothing that was ruled out comes back.
    if (isSettled(search)) return true;
    search = searchOn(posed.bench, search, entry);
  }
  return isSettled(search);
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
