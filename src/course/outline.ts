import type { Objective } from './task.ts';

/** A lesson as lists and maps need it. */
export interface LessonOutline {
  /** Part of the address; has no number, so that reordering breaks no link. */
  readonly slug: string;
  /** Place in the course, from 1. */
  readonly number: number;
  readonly title: string;
  readonly summary: string;
  /** Minutes it takes with its questions, about. */
  readonly minutes: number;
  readonly objectives: readonly Objective[];
}

export interface PartOutline {
  readonly id: string;
  /** Place in the course, from 1. */
  readonly number: number;
  readonly title: string;
  readonly summary: string;
  readonly lessons: readonly LessonOutline[];
}

/** A way through the course for a purpose: the slugs of its lessons in order. */
export interface Route {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly lessons: readonly string[];
}

export interface Outline {
  readonly parts: readonly PartOutline[];
  readonly routes: readonly Route[];
}

/** Every lesson in the order of the course. */
export const lessonsOf = ({ parts }: Outline): readonly LessonOutline[] =>
  parts.flatMap(({ lessons }) => lessons);

/** Every objective in the order of the course. */
export const objectivesOf = (outline: Outline): readonly Objective[] =>
  lessonsOf(outline).flatMap(({ objectives }) => objectives);
