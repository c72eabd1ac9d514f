import { makeItem, parseAddress } from '../../course/items/index.ts';
import { addressOf, type Level, type Objective, type Task } from '../../course/task.ts';
import { fetchShelf } from '../course/shelf.ts';
import { type Asked, askedOf } from './question.ts';

/*
  Everything that makes and judges questions: the makers, the engine and the store. It is fetched when a question is
  first touched, never before.
*/
export { masteryOf } from '../../course/progress/mastery.ts';
export { openStore } from '../../store/open.ts';

/** A seed that nobody has seen. */
export const freshSeed = (): number => crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;

/** A question of a task. Rejects when what it needs cannot be fetched, or when no seed gives one. */
export async function askTask(task: Task, seed: number, level: Level): Promise<Asked> {
  const shelf = await fetchShelf([task]);
  return askedOf(shelf, makeItem(shelf, task, seed, level));
}

/** The question of an address, or undefined when it is none. Rejects when what it needs cannot be fetched. */
export async function askAddress(address: string): Promise<Asked | undefined> {
  const found = parseAddress(address);
  return found && askTask(found.task, found.seed, found.level);
}

/** Whether an address is one of a task's. */
export function isOf(task: Task, address: string): boolean {
  const found = parseAddress(address);
  return found !== undefined && addressOf(task, found.seed, found.level) === address;
}

/** The task of an objective whose turn it is, after so many fresh answers. */
export function taskAfter({ tasks }: Pick<Objective, 'tasks'>, answers: number): Task {
  const task = tasks[answers % tasks.length];
  if (!task) throw new RangeError('expected an objective with a task, found one without');
  return task;
}
