import { makeItem } from '../../course/items/index.ts';
import { type Outline, objectivesOf } from '../../course/outline.ts';
import type { Level, Objective, Shelf, Task } from '../../course/task.ts';
import { type Question, questionOf } from './question.ts';

/**
 * An objective of the course, and the first of its tasks.
 * @param piece the piece of a page that asks for it, to be named when it is not there
 * @throws Error that says which objectives there are
 */
export function objectiveOf(
  outline: Outline,
  id: string,
  piece: string,
): { readonly objective: Objective; readonly task: Task } {
  const all = objectivesOf(outline);
  const objective = all.find((one) => one.id === id);
  const task = objective?.tasks[0];
  if (!objective || !task)
    throw new Error(
      `<${piece} objective="${id}">: expected an objective with a task (${all.map((one) => one.id).join(', ')})`,
    );
  return { objective, task };
}

/** The question of a task, to be shown: without its judge. */
export const questionFor = (shelf: Shelf, task: Task, seed: number, level: Level = 1): Question =>
  questionOf(shelf, makeItem(shelf, task, seed, level));
