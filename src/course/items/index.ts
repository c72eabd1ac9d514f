import type { Item } from '../item.ts';
import type { Level, Maker, Shelf, Task } from '../task.ts';
import { circuits } from './circuits.ts';
import { others } from './others.ts';

/** Everything that makes items. */
export const makers: readonly Maker[] = [...circuits, ...others];

export const findMaker = (id: string): Maker | undefined => makers.find((maker) => maker.id === id);

/** How many seeds are tried before a task is given up. */
const TRIES = 50;

/**
 * The item of a task and seed; where that seed gives no fair question, the next one that does. The address of the
 * item has the seed that was used.
 * @throws RangeError when the task names something that is not there, or when no seed gives a question
 */
export function makeItem(shelf: Shelf, task: Task, seed: number, level: Level): Item {
  const maker = findMaker(task.make);
  if (!maker)
    throw new RangeError(`expected a maker (${makers.map(({ id }) => id).join(', ')}), found "${task.make}"`);
  for (let k = 0; k < TRIES; k++) {
    const item = maker.make(shelf, task, (seed + k) >>> 0, level);
    if (item) return item;
  }
  const named = task.quiz ?? task.sum ?? task.layouts?.join(', ') ?? 'nothing';
  throw new RangeError(
    `expected a task that gives a question in ${TRIES} seeds, found ${task.make} with ${named}`,
  );
}

const ADDRESS = /^([a-z-]+)\/([a-z0-9+-]+)(?:@([a-z0-9+-]+))?\/(\d{1,10})\/([123])$/;

/** What an address stands for, or undefined when it is none: `live-terminals/three-port/4711/2`. */
export function parseAddress(address: string): { task: Task; seed: number; level: Level } | undefined {
  const [, make = '', named = '', only, seed, level] = ADDRESS.exec(address) ?? [];
  const maker = findMaker(make);
  if (!maker) return undefined;
  const task: Task =
    maker.needs === 'quiz'
      ? { make, quiz: named }
      : maker.needs === 'sum'
        ? { make, sum: named }
        : { make, layouts: named.split('+'), ...(only !== undefined && { only: only.split('+') }) };
  return { task, seed: Number(seed) >>> 0, level: Number(level) as Level };
}
