import type { LessonState } from '../../course/progress/course-state.ts';

/** How well a lesson is known: each has a shape, a word and a colour. `due` is solid, and wants revising. */
export type Mark = 'unseen' | 'shaky' | 'solid' | 'due';

export const marks: readonly { readonly id: Mark; readonly word: string; readonly says: string }[] = [
  { id: 'unseen', word: 'Not tried', says: 'No question answered yet.' },
  { id: 'shaky', word: 'Shaky', says: 'Begun, and not yet sure.' },
  { id: 'solid', word: 'Solid', says: 'Right on fresh questions, without help.' },
  { id: 'due', word: 'Due', says: 'Solid, and time to try it again.' },
];

export const wordOf = (mark: Mark): string => marks.find(({ id }) => id === mark)?.word ?? '';

/** The mark of a lesson. What is shaky is not called due: it is to be learnt before it is to be revised. */
export const markOf = ({ state, due }: Pick<LessonState, 'state' | 'due'>): Mark =>
  state === 'solid' && due > 0 ? 'due' : state;
