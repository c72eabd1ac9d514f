/** What was answered, in a form that every standard can be told. */
export type Response =
  | { readonly kind: 'choice' | 'order'; readonly ids: readonly string[] }
  | { readonly kind: 'match'; readonly pairs: readonly (readonly [string, string])[] }
  | { readonly kind: 'number'; readonly typed: string };

/** How something was answered: a question's form, or `work` for wirings and visits. */
export type AnswerKind = Response['kind'] | 'work';

/** One answered question, judged wiring or finished visit. */
export interface Interaction {
  /** Tells it from all others of this learner: letters, digits, hyphens and underscores, at most 100. */
  readonly key: string;
  /** Id of what it shows. */
  readonly objective: string;
  /** What it was about, in words. */
  readonly says: string;
  readonly kind: AnswerKind;
  /** Undefined where the answer itself is not kept. */
  readonly response?: Response;
  readonly right: boolean;
  /** When it was given, in milliseconds since 1970, and milliseconds that it took. */
  readonly at: number;
  readonly took: number;
}

export type Status = 'incomplete' | 'passed' | 'failed';

/** How the learner stands. */
export interface Standing {
  /** What is right of all that is asked, 0 to 1. */
  readonly score: number;
  /** What is done with, right or not, 0 to 1. */
  readonly progress: number;
  readonly status: Status;
}

/** All that a platform is told at a time. */
export interface Report extends Standing {
  /** Where the learner is: a path of this site. */
  readonly bookmark: string;
  /** What the platform keeps for another device, within its limit. */
  readonly suspend: string;
  /** What has been answered since the last report. */
  readonly interactions: readonly Interaction[];
}

/**
 * How a learner stands by a pass mark of the platform, which takes the place of the rule of our own.
 * @param passMark 0 to 1; undefined where the platform has none
 */
export function byPassMark(standing: Standing, passMark: number | undefined): Standing {
  if (passMark === undefined) return standing;
  if (standing.score >= passMark) return { ...standing, status: 'passed' };
  return { ...standing, status: standing.progress >= 1 ? 'failed' : 'incomplete' };
}
