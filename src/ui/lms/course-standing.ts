import { type Outline, objectivesOf } from '../../course/outline.ts';
import { byObjective } from '../../course/progress/answers.ts';
import { masteryOf } from '../../course/progress/mastery.ts';
import type { Trial } from '../../course/trial.ts';
import type { Standing } from './report.ts';

/** How the course stands, and in how many objectives out of how many. */
export interface CourseStanding extends Standing {
  readonly solid: number;
  readonly of: number;
}

/**
 * The course is passed when every objective of it is solid; until then it is incomplete, and it cannot be failed.
 * @param trials the whole log, in any order
 */
export function courseStanding(outline: Outline, trials: readonly Trial[]): CourseStanding {
  const logs = byObjective(trials);
  const objectives = objectivesOf(outline);
  const solid = objectives.filter(({ id }) => masteryOf(logs.get(id) ?? []).state === 'solid').length;
  const share = objectives.length === 0 ? 0 : solid / objectives.length;
  return {
    score: share,
    progress: share,
    status: solid === objectives.length && solid > 0 ? 'passed' : 'incomplete',
    solid,
    of: objectives.length,
  };
}
