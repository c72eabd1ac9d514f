import type { Trial } from '../trial.ts';
import { byObjective, DAY, freshAnswers, isRightAlone } from './answers.ts';

/** So many answers, and how many of them were right without help. */
export interface Share {
  readonly answers: number;
  readonly right: number;
}

/** What the site can say of its own effect on one learner, and nothing more. */
export interface Measure {
  /** The first answer to each objective that has a later one, before or after its lesson. */
  readonly first: Share;
  /** The latest answer to the same objectives, on a fresh variant. */
  readonly latest: Share;
  /** Answers to fresh variants at least 7 days after the answer before. */
  readonly delayed: Share;
  /** Hints opened for each right answer, in the earlier and the later half of the log. */
  readonly hintsPerSuccess: { readonly earlier: number; readonly later: number };
  /** False while there is too little to say anything: fewer than 10 objectives asked twice. */
  readonly enough: boolean;
}

/** Fewer than this many objectives say nothing. Common practice. */
const ENOUGH = 10;
const DELAY = 7 * DAY;

const shareOf = (trials: readonly Trial[]): Share => ({
  answers: trials.length,
  right: trials.filter(isRightAlone).length,
});

function hintsPerSuccess(trials: readonly Trial[]): number {
  const successes = trials.filter(({ right }) => right).length;
  return successes === 0 ? 0 : trials.reduce((sum, { hints }) => sum + hints, 0) / successes;
}

/** @param trials the whole log, in any order */
export function measureOf(trials: readonly Trial[]): Measure {
  const first: Trial[] = [];
  const latest: Trial[] = [];
  const delayed: Trial[] = [];
  for (const own of byObjective(trials).values()) {
    const before = [...own].sort((a, b) => a.at - b.at).find(({ mode }) => mode === 'before');
    const fresh = freshAnswers(own);
    const answers = before && fresh.every(({ at }) => at >= before.at) ? [before, ...fresh] : fresh;
    const [start, ...rest] = answers;
    const end = rest.at(-1);
    if (!start || !end) continue;
    first.push(start);
    latest.push(end);
    delayed.push(...rest.filter(({ at }, k) => at - (answers[k]?.at ?? at) >= DELAY));
  }
  const all = freshAnswers(trials);
  const half = Math.ceil(all.length / 2);
  return {
    first: shareOf(first),
    latest: shareOf(latest),
    delayed: shareOf(delayed),
    hintsPerSuccess: {
      earlier: hintsPerSuccess(all.slice(0, half)),
      later: hintsPerSuccess(all.slice(half)),
    },
    enough: first.length >= ENOUGH,
  };
}
