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
  /**
   * Reads how things stand and reports it; calls follow one another.
   * @param unchanged whether it is reported, too, when nothing is new but the time: a platform sends each report on
   */
  readonly update: (unchanged?: 'too') => Promise<void>;
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
  let isTold = false;
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
  const isNews = (look: Look): boolean =>
    !isTold ||
    look.fresh.length > 0 ||
    look.suspend !== last?.suspend ||
    JSON.stringify(look.standing) !== JSON.stringify(last.standing);
  const work = async (unchanged: boolean) => {
    if (isOver) return;
    try {
      const look = await subject.look();
      if (isOver || (!unchanged && !isNews(look))) return;
      last = look;
      isTold = false;
      const problems = await platform.report(reportOf(look, look.fresh));
      isTold = problems.length === 0;
      tell({ says: look.says, problems });
    } catch (problem) {
      const why = problem instanceof Error ? problem.message : String(problem);
      tell({ says: last?.says ?? '', problems: [`Your progress on this device could not be read: ${why}`] });
    }
  };
  return {
    update: (unchanged) => {
      working = working.then(() => work(unchanged === 'too'));
      return working;
    },
    end: async () => {
      if (isOver) return;
      isOver = true;
      // Before anything has been seen, what the platform has must not be written over with nothing.
      const problems = await platform.end(last && reportOf(last, []));
      tell({ says: last?.says ?? '', problems });
    },
  };
}
