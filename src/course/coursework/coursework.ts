import type { Level, Task } from '../task.ts';

/** What holds for every task of a coursework. */
interface Rules {
  /** Unique in its coursework: lower-case letters, digits and hyphens. */
  readonly id: string;
  /** How often each question, job or callout of the task may be answered, 1 to 10; later answers do not count. */
  readonly attempts: number;
  /** How many of the three helps may be open when an answer is given: 0 to 3. With more it does not count. */
  readonly hints: number;
  /** How many things of the task must be right for it to pass; all unless told. */
  readonly pass?: number;
}

/**
 * One task:
 * - `lesson`: the lesson is read, then a question on each of its objectives is answered;
 * - `questions`: so many fresh questions of one kind;
 * - `job`: a wiring job;
 * - `callout`: an authored callout, the same for everybody;
 * - `fault`: a fault of the learner's own to find in a layout.
 */
export type CourseworkTask = Rules &
  (
    | { readonly kind: 'lesson'; readonly lesson: string }
    | {
        readonly kind: 'questions';
        readonly title: string;
        readonly about: Task;
        readonly level: Level;
        readonly count: number;
      }
    | { readonly kind: 'job'; readonly job: string }
    | { readonly kind: 'callout'; readonly callout: string }
    | { readonly kind: 'fault'; readonly system: string; readonly level: Level }
  );

/** What a tutor sets: a file and a link. */
export interface Coursework {
  /** Names it in results: lower-case letters, digits and hyphens. */
  readonly id: string;
  readonly title: string;
  /** What learners are told before they begin. */
  readonly says?: string;
  /** Days, `2027-03-31`. They are shown; nothing is locked by them. */
  readonly opens?: string;
  readonly due?: string;
  /** `own`: each learner code has its own questions, strip numbers, wrong wire and fault. `same`: the class shares them. */
  readonly variants: 'own' | 'same';
  /** Deals the variants, together with the learner's code: 32 bits. */
  readonly seed: number;
  /** At least one, at most 50. */
  readonly tasks: readonly CourseworkTask[];
  /** How many tasks must pass for the whole to pass; all unless told. */
  readonly pass?: number;
}

/** A learner, as the college knows them: the code is what variants are dealt by. */
export interface Learner {
  /** 2 to 20 capital letters, digits and hyphens. */
  readonly code: string;
  /** As they wrote it; may be absent. */
  readonly name?: string;
}

const CODE = /^[A-Z0-9][A-Z0-9-]{1,19}$/;

/** A learner's code as it is kept: capitals, no spaces; undefined for what cannot be one. */
export function readCode(text: string): string | undefined {
  const code = text.replace(/\s+/g, '').toUpperCase();
  return CODE.test(code) ? code : undefined;
}
