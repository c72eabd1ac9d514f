import { isEvidence, isUnaided, type Trial } from '../trial.ts';

/** A day in milliseconds: logs count in the one, memory in the other. */
export const DAY = 86_400_000;

/**
 * What a log proves: the first answer to each fresh variant, oldest first. A question asked before the teaching shows
 * where a learner started and is not held against them, so it does not count.
 * @param trials of any objectives, in any order
 */
export function freshAnswers(trials: readonly Trial[]): readonly Trial[] {
  const seen = new Set<string>();
  return [...trials]
    .sort((a, b) => a.at - b.at)
    .filter((trial) => {
      if (!isEvidence(trial) || trial.mode === 'before') return false;
      const key = `${trial.objective} ${trial.item}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}

/** Right, with no hint and no step shown. */
export const isRightAlone = (trial: Trial): boolean => trial.right && isUnaided(trial);

/** Trials by their objective, each in the order of the log. */
export function byObjective(trials: readonly Trial[]): ReadonlyMap<string, readonly Trial[]> {
  const groups = new Map<string, Trial[]>();
  for (const trial of trials) {
    const group = groups.get(trial.objective);
    if (group) group.push(trial);
    else groups.set(trial.objective, [trial]);
  }
  return groups;
}
