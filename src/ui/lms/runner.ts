import { bookmarkOf } from './place.ts';
import type { Platform } from './platform.ts';
import { byPassMark, type Report } from './report.ts';
import type { Look, Subject } from './subject.ts';

/** What the page shows of a session. */
export interface Told {
  readonly says: string;
  /** What went wrong with the last report, in words; empty when all was taken. */
  readonly problems: readonly string[];
}

/** Keeps a platform up to date with what a learner does. No call throws. */
export interface Runner {
  /** Reads how things stand and reports it; calls follow one another. */
  readonly update: () => Promise<void>;
  /** Reports what is known now and ends the session, before anything is waited for; a second call does nothing. */
  readonly end: () => Promise<void>;
}

/**
 * @param place the learner's path on the site now; undefined where it cannot be told
 * @param tell is called after each report
 */
export function makeRunner(
  platform: Platform,
  subject: Subject,
  place: () => string | undefined,
  tell: (told: Told) => void,
): Runner {
  let bookmark = platform.bookmark || bookmarkOf(subject.start, platform.room.bookmark);
  let last: Look | undefined;
  let passed = platform.passed;
  let best = platform.best;
  let isOver = false;
  let working: Promise<void> = Promise.resolve();

  const reportOf = ({ standing, suspend }: Look, interactions: Report['interactions']): Report => {
    const path = place();
    if (path !== undefined) bookmark = bookmarkOf(path, platform.room.bookmark);
    // What has been reached is not taken back: revision may show that something has slipped since.
    const now = byPassMark(standing, platform.passMark);
    best = Math.max(best, now.score);
    passed ||= now.status === 'passed';
    return {
      score: best,
      progress: now.progress,
      status: passed ? 'passed' : now.status,
      bookmark,
      suspend,
      interactions,
    };
  };
  const work = async () => {
    if (isOver) return;
    try {
      const look = await subject.look();
      if (isOver) return;
      last = look;
      const problems = await platform.report(reportOf(look, look.fresh));
      tell({ says: look.says, problems });
    } catch (problem) {
      const why = problem instanceof Error ? problem.message : String(problem);
      tell({ says: last?.says ?? '', problems: [`Your progress on this device could not be read: ${why}`] });
    }
  };
  return {
    update: () => {
      working = working.then(work);
      return working;
    },
    end: async () => {
      if (isOver) return;
      isOver = true;
      // Without a look nothing is known, and nothing that the platform has may be overwritten by nothing.
      const known = last ?? { standing: NOTHING, says: '', suspend: platform.suspended, fresh: [] };
      const problems = await platform.end(reportOf(known, []));
      tell({ says: known.says, problems });
    },
  };
}

const NOTHING = { score: 0, progress: 0, status: 'incomplete' } as const;
