import type { Outline } from '../../course/outline.ts';
import { type CourseState, courseState } from '../../course/progress/course-state.ts';
import { timeOfDay } from '../../course/progress/day.ts';
import { type Next, nextThing } from '../../course/progress/next.ts';
import { openStore } from '../../store/open.ts';
import type { Choices, Store } from '../../store/store.ts';
import { href } from '../shell/href.ts';

/** The course as this device's learner stands in it. */
export interface Learner {
  readonly store: Store;
  readonly state: CourseState;
  readonly choices: Choices;
  readonly next: Next;
}

let outline: Promise<Outline> | undefined;

/** The outline, fetched once; a lost connection does not bar the next try. */
function fetchOutline(): Promise<Outline> {
  outline ??= fetch(href('/course/outline.json')).then((answer) => answer.json());
  outline.catch(() => {
    outline = undefined;
  });
  return outline;
}

/** Reads the log on this device. Rejects when the outline of the course cannot be fetched. */
export async function readLearner(): Promise<Learner> {
  const [course, store] = await Promise.all([fetchOutline(), openStore()]);
  const [trials, choices] = await Promise.all([store.trials(), store.choices()]);
  const day = choices.assessment;
  const state = courseState(course, trials, store.now(), day === undefined ? undefined : timeOfDay(day));
  const route = course.routes.find(({ id }) => id === choices.route);
  return { store, state, choices, next: nextThing(state, { route, last: choices.last?.path }) };
}

/** Where this learner goes on. */
export const nextFor = async (): Promise<Next> => (await readLearner()).next;
