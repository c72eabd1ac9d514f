import type { Level } from '../task.ts';
import type { Trial } from '../trial.ts';
import { freshAnswers, isRightAlone } from './answers.ts';

/**
 * First-try success is kept between these. It is a heuristic: 85 % was fastest for trained two-choice models (Wilson and
 * others 2019), which is not a result about people in a classroom.
 */
export const BAND = { low: 0.7, high: 0.9 } as const;
/** So many answers decide at least, and so many at most. */
const LEAST = 3;
const MOST = 10;

/** The level that an address names, or undefined: it is the last piece. */
export function levelIn(item: string): Level | undefined {
  const last = Number(item.slice(item.lastIndexOf('/') + 1));
  return last === 1 || last === 2 || last === 3 ? last : undefined;
}

/**
 * How hard the next variant of an objective should be. Starts easy; above the band it goes up, below it comes down, and
 * each level is judged by its own answers alone.
 * @param trials of one objective, in any order
 */
export function nextLevel(trials: readonly Trial[]): Level {
  let level: Level = 1;
  let recent: boolean[] = [];
  for (const trial of freshAnswers(trials)) {
    const right = isRightAlone(trial);
    const asked = levelIn(trial.item) ?? level;
    // A miss on a harder variant, or a hit on an easier one, says nothing about this level.
    if (right ? asked < level : asked > level) continue;
    recent = [...recent, right].slice(-MOST);
    if (recent.length < LEAST) continue;
    const success = recent.filter(Boolean).length / recent.length;
    const moved = Math.min(3, Math.max(1, level + (success > BAND.high ? 1 : success < BAND.low ? -1 : 0)));
    if (moved !== level) {
      level = moved as Level;
      recent = [];
    }
  }
  return level;
}
