import type { Level } from '../task.ts';
import type { Trial } from '../trial.ts';
import { freshAnswers, isRightAlone } from './answers.ts';
import { nextLevel } from './difficulty.ts';

/** How well an objective is known. */
export type Known = 'unseen' | 'shaky' | 'solid';
/** How much is shown before an answer: a worked example, some steps, or nothing. */
export type Help = 'worked' | 'partly' | 'own';

export interface Mastery {
  readonly state: Known;
  /** First answers to fresh variants. */
  readonly fresh: number;
  /** How many of these were right without help. */
  readonly right: number;
  readonly help: Help;
  /** Level of the next variant. */
  readonly level: Level;
}

const RUNGS = ['worked', 'partly', 'own'] as const;

/**
 * Solid is four of the last five first answers right without help (80 %), or the first three in a row; when that no
 * longer holds, it is shaky again.
 */
function isSolid(rights: readonly boolean[]): boolean {
  const last = rights.slice(-5);
  const right = last.filter(Boolean).length;
  return right >= 4 || (last.length >= 3 && right === last.length);
}

/**
 * The mastery of one objective.
 * @param trials of that objective, in any order
 */
export function masteryOf(trials: readonly Trial[]): Mastery {
  const answers = freshAnswers(trials);
  const rights = answers.map(isRightAlone);
  const solid = isSolid(rights);
  let rung = 0;
  for (const { right, hints } of answers) {
    // Help shrinks a step with each right answer, stays when a hint was needed, and comes back with a wrong one.
    if (!right) rung = Math.max(0, rung - 1);
    else if (hints === 0) rung = Math.min(2, rung + 1);
  }
  return {
    state: answers.length === 0 ? 'unseen' : solid ? 'solid' : 'shaky',
    fresh: answers.length,
    right: rights.filter(Boolean).length,
    help: solid ? 'own' : (RUNGS[rung] ?? 'worked'),
    level: nextLevel(trials),
  };
}
