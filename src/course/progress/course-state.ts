import { calloutObjectives } from '../callouts/objectives.ts';
import { type LessonOutline, lessonsOf, type Outline, type PartOutline } from '../outline.ts';
import type { Objective } from '../task.ts';
import type { Trial } from '../trial.ts';
import { byObjective } from './answers.ts';
import { type Known, type Mastery, masteryOf } from './mastery.ts';
import { type Card, cardOf, recallAt } from './revision.ts';

export interface ObjectiveState {
  readonly objective: Objective;
  readonly mastery: Mastery;
  /** Undefined before the first answer. */
  readonly card: Card | undefined;
  /** Whether its revision is due. */
  readonly due: boolean;
  /** Estimated chance of recall now, 0 to 1; undefined before the first answer. */
  readonly recall: number | undefined;
}

/** How many objectives are in each state, and how many are due. */
export interface Counts {
  readonly unseen: number;
  readonly shaky: number;
  readonly solid: number;
  readonly due: number;
}

export interface Whole extends Counts {
  /** Solid when all of it is, unseen when none of it has been met, else shaky. */
  readonly state: Known;
  readonly objectives: readonly ObjectiveState[];
}

export interface LessonState extends Whole {
  readonly lesson: LessonOutline;
}

export interface PartState extends Whole {
  readonly part: PartOutline;
  readonly lessons: readonly LessonState[];
}

export interface CourseState extends Whole {
  readonly parts: readonly PartState[];
  /** Every lesson in the order of the course. */
  readonly lessons: readonly LessonState[];
  /** Finding faults on visits: it stands beside the lessons, and is not counted with them. */
  readonly callouts: Whole;
}

function wholeOf(objectives: readonly ObjectiveState[]): Whole {
  const count = (known: Known) => objectives.filter(({ mastery }) => mastery.state === known).length;
  const [unseen, shaky, solid] = [count('unseen'), count('shaky'), count('solid')];
  const all = objectives.length;
  const state = unseen === all ? 'unseen' : solid === all ? 'solid' : 'shaky';
  return { state, objectives, unseen, shaky, solid, due: objectives.filter(({ due }) => due).length };
}

/**
 * The whole course as one learner's log shows it. Trials of objectives that the course no longer has are passed over.
 * @param trials the whole log, in any order
 * @param now milliseconds since 1970
 * @param assessment when it all has to be known, likewise
 */
export function courseState(
  outline: Outline,
  trials: readonly Trial[],
  now: number,
  assessment?: number,
): CourseState {
  const logs = byObjective(trials);
  const stateOf = (objective: Objective): ObjectiveState => {
    const own = logs.get(objective.id) ?? [];
    const card = cardOf(own, assessment);
    return {
      objective,
      mastery: masteryOf(own),
      card,
      due: card !== undefined && card.due <= now,
      recall: card && recallAt(card, now),
    };
  };
  const states = new Map(
    lessonsOf(outline).map((lesson): [string, LessonState] => [
      lesson.slug,
      { lesson, ...wholeOf(lesson.objectives.map(stateOf)) },
    ]),
  );
  const parts = outline.parts.map((part): PartState => {
    const lessons = part.lessons.flatMap(({ slug }) => states.get(slug) ?? []);
    return { part, lessons, ...wholeOf(lessons.flatMap(({ objectives }) => objectives)) };
  });
  const lessons = parts.flatMap((part) => part.lessons);
  const callouts = wholeOf(calloutObjectives.map(stateOf));
  return { parts, lessons, callouts, ...wholeOf(lessons.flatMap(({ objectives }) => objectives)) };
}
