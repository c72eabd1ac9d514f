import type { Mode } from '../platform.ts';
import type { Interaction, Report } from '../report.ts';
import type { Calls } from './calls.ts';

/** How one edition of SCORM writes things down: everything else about a session is the same in both. */
export interface Edition {
  /** Score, status, bookmark and suspend data, as elements and values in the order in which they are written. */
  readonly standing: (report: Report) => readonly (readonly [element: string, value: string])[];
  /** The same for one interaction, `cmi.interactions.n.` left out; its id comes first. */
  readonly interaction: (interaction: Interaction) => readonly (readonly [element: string, value: string])[];
  /** What is written when the platform wants nothing recorded. */
  readonly untold: readonly (readonly [element: string, value: string])[];
  readonly time: (length: number) => readonly [element: string, value: string];
  /** The attempt stays open, so that the platform keeps its suspend data. */
  readonly exit: readonly [element: string, value: string];
}

/** An interaction that the platform refuses so often is given up, and those after it. */
const MOST_REFUSALS = 3;

export interface Session {
  readonly report: (report: Report) => readonly string[];
  readonly end: (report?: Report) => readonly string[];
}

/**
 * A session that has been started.
 * @param now milliseconds, by any clock that only goes forward
 */
export function makeSession(calls: Calls, edition: Edition, mode: Mode, now: () => number): Session {
  const begun = now();
  const written = new Map<string, string>();
  const waiting: Interaction[] = [];
  let count: number | undefined;
  let refusals = 0;
  let isOver = false;

  /** Writes what the platform does not have yet. */
  const put = ([element, value]: readonly [string, string]): boolean => {
    if (written.get(element) === value) return true;
    if (!calls.set(element, value)) return false;
    written.set(element, value);
    return true;
  };
  const nextIndex = (): number => {
    count ??= Number(calls.get('cmi.interactions._count') ?? Number.NaN);
    return count;
  };
  const tellInteractions = () => {
    while (waiting[0] && refusals < MOST_REFUSALS) {
      const n = nextIndex();
      // A platform may do without interactions.
      if (!Number.isSafeInteger(n)) {
        refusals = MOST_REFUSALS;
        return;
      }
      const [first, ...rest] = edition.interaction(waiting[0]);
      if (!first || !put([`cmi.interactions.${n}.${first[0]}`, first[1]])) {
        refusals++;
        return;
      }
      for (const [element, value] of rest) put([`cmi.interactions.${n}.${element}`, value]);
      count = n + 1;
      waiting.shift();
    }
  };
  const tell = (report: Report | undefined) => {
    if (mode === 'normal') {
      if (!report) return;
      waiting.push(...report.interactions);
      for (const entry of edition.standing(report)) put(entry);
      tellInteractions();
    } else for (const entry of edition.untold) put(entry);
  };
  const tellTime = () => put(edition.time(now() - begun));

  return {
    report: (report) => {
      if (isOver) return [];
      tell(report);
      tellTime();
      calls.commit();
      return calls.faults();
    },
    end: (report) => {
      if (isOver) return [];
      isOver = true;
      tell(report);
      tellTime();
      put(edition.exit);
      calls.commit();
      calls.end();
      return calls.faults();
    },
  };
}
