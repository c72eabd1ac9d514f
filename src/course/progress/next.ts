import { familyOfObjective } from '../callouts/objectives.ts';
import type { Route } from '../outline.ts';
import type { CourseState, LessonState } from './course-state.ts';
import { dueFirst } from './mix.ts';

/** The next thing to do, for a button that says “Continue”. */
export interface Next {
  readonly kind: 'start' | 'lesson' | 'revise' | 'visit' | 'mixed';
  /** From the site's root. */
  readonly path: string;
  readonly title: string;
  /** Why this, in a sentence. */
  readonly why: string;
}

/** What the choice of the next thing depends on besides the log. */
export interface Standing {
  /** The route followed; the whole course without one. */
  readonly route?: Route | undefined;
  /** The path of the page where the learner was last. */
  readonly last?: string | undefined;
}

const lessonPath = ({ lesson }: LessonState) => `/lessons/${lesson.slug}/`;

/**
 * What to do next: the lesson that was left before its questions were solid, then what is due, visits last, then the first lesson of
 * the route that is not solid, and when all are, a mixed set.
 */
export function nextThing(state: CourseState, { route, last }: Standing = {}): Next {
  const own = route
    ? route.lessons.flatMap((slug) => state.lessons.find(({ lesson }) => lesson.slug === slug) ?? [])
    : state.lessons;
  const open = own.filter((lesson) => lesson.state !== 'solid' && lesson.objectives.length > 0);
  const [first] = open;
  const isNew = state.objectives.length === state.unseen;
  if (isNew && last === undefined && first)
    return { kind: 'start', path: lessonPath(first), title: first.lesson.title, why: 'Start here.' };
  const left = open.find((lesson) => last?.includes(lessonPath(lesson)));
  if (left)
    return { kind: 'lesson', path: lessonPath(left), title: left.lesson.title, why: 'You left off here.' };
  if (state.due > 0)
    return {
      kind: 'revise',
      path: '/practice/#revise',
      title: 'Revise what is due',
      why: state.due === 1 ? 'One thing is due.' : `${state.due} things are due.`,
    };
  const [visit] = dueFirst(state.callouts.objectives);
  if (visit)
    return {
      kind: 'visit',
      path: `/practice/#visit=${familyOfObjective(visit.objective.id)}`,
      title: 'A visit to a fault',
      why:
        state.callouts.due === 1
          ? 'One kind of fault is due.'
          : `${state.callouts.due} kinds of fault are due.`,
    };
  if (first) {
    const why = first.state === 'unseen' ? 'The next lesson.' : 'Not all of it is solid yet.';
    return { kind: 'lesson', path: lessonPath(first), title: first.lesson.title, why };
  }
  return {
    kind: 'mixed',
    path: '/practice/#mixed',
    title: 'A mixed set',
    why: route ? 'Every lesson of your route is solid.' : 'Every lesson is solid.',
  };
}
