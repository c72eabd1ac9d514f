import type { Answer, Judgement } from '../../course/item.ts';
import type { Mode, Trial } from '../../course/trial.ts';
import type { Question } from './question.ts';

/** An answer as it was given, and what came of it. */
export interface Given {
  readonly answer: Answer;
  readonly judgement: Judgement;
  /** Hints that were open. */
  readonly hints: number;
  /** Steps that were shown. */
  readonly shown: number;
  /** Milliseconds since the question was seen. */
  readonly took: number;
}

/**
 * The answer as the log keeps it.
 * @param trials the log so far, to tell a first answer from a later one
 * @param at milliseconds since 1970
 */
export function trialOf(
  { id, method }: Pick<Question, 'id' | 'method'>,
  { judgement, hints, shown, took }: Given,
  objective: string,
  mode: Mode,
  trials: readonly Trial[],
  at: number,
): Trial {
  const before = trials.filter((trial) => trial.objective === objective && trial.item === id).length;
  return {
    at,
    objective,
    item: id,
    method,
    right: judgement.right,
    attempt: before + 1,
    hints,
    shown,
    took: Math.round(took),
    mode,
  };
}
