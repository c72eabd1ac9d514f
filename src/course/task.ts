import type { Item } from './item.ts';
import type { Layout } from './layout.ts';
import type { Quiz } from './quiz.ts';

/** How hard a variant is: 1 with few things to weigh, 3 with as many as on a real job. */
export type Level = 1 | 2 | 3;

/** What to ask, as a lesson's objective says it: a maker of items, and what it is to use. */
export interface Task {
  /** Id of the maker. */
  readonly make: string;
  /** Ids of layouts, one of which is taken; for makers that need one. */
  readonly layouts?: readonly string[];
  /** Id of an authored quiz; for makers that need one. */
  readonly quiz?: string;
  /** Which sum, for makers of sums. */
  readonly sum?: string;
  /** What a lesson keeps to: ids of parts whose leads are lifted, or of mistakes that are made. A layout may lack some. */
  readonly only?: readonly string[];
}

/** Where a maker finds what a task names. Both throw a RangeError that names an id that is not there. */
export interface Shelf {
  readonly layout: (id: string) => Layout;
  readonly quiz: (id: string) => Quiz;
}

/** Makes items of one kind. The same task, seed and level always give the same item. */
export interface Maker {
  readonly id: string;
  /** In a few words, for lists: "Which terminals are live?" */
  readonly title: string;
  /** What a task must name. */
  readonly needs: 'layout' | 'layouts' | 'quiz' | 'sum';
  /** Whether the learner produces the answer rather than picks it. */
  readonly produces: boolean;
  /** Undefined where this seed gives no fair question on what the task names; another seed may. */
  readonly make: (shelf: Shelf, task: Task, seed: number, level: Level) => Item | undefined;
}

/** An objective of a lesson: something a learner can do, and the tasks that show it. */
export interface Objective {
  /** Unique in the course: logs and mark books keep it. */
  readonly id: string;
  /** What the learner can do, to follow “You can”: "say which terminals are live". */
  readonly says: string;
  readonly tasks: readonly Task[];
}

/** The address of a variant: `live-terminals/three-port/4711/2`; what it keeps to follows an @. */
export function addressOf({ make, layouts, quiz, sum, only }: Task, seed: number, level: Level): string {
  const named = quiz ?? sum ?? layouts?.join('+') ?? '';
  return [make, only ? `${named}@${only.join('+')}` : named, seed, level].join('/');
}
