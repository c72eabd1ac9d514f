import { expect, test } from 'vitest';
import { produces } from '../../src/course/item.ts';
import { makeItem, makers } from '../../src/course/items/index.ts';
import { sums } from '../../src/course/items/sums/index.ts';
import { objectivesOf } from '../../src/course/outline.ts';
import type { Maker, Task } from '../../src/course/task.ts';
import { loadOutline } from '../../src/files/site/course.ts';
import { itemsOf, shelf } from './items/support.ts';

const tasks: readonly Task[] = objectivesOf(loadOutline()).flatMap((objective) => objective.tasks);
const producing = (list: readonly { readonly produces: boolean }[]) =>
  list.filter((one) => one.produces).length;
const makerOf = ({ make }: Task): Maker => {
  const maker = makers.find(({ id }) => id === make);
  if (!maker) throw new Error(`no maker "${make}"`);
  return maker;
};

test('at least half of all makers have the learner produce the answer', () => {
  expect(new Set(makers.map(({ id }) => id)).size).toBe(makers.length);
  expect(producing(makers) * 2).toBeGreaterThanOrEqual(makers.length);
});

test('at least half of all tasks that lessons name have the learner produce the answer', () => {
  expect(tasks.length).toBeGreaterThan(0);
  expect(producing(tasks.map(makerOf)) * 2).toBeGreaterThanOrEqual(tasks.length);
});

test('every task that a lesson names gives a question on every level, as its maker says', () => {
  for (const task of tasks) {
    for (const level of [1, 2, 3] as const)
      expect(produces(makeItem(shelf, task, 1, level)), JSON.stringify(task)).toBe(makerOf(task).produces);
  }
});

test('there are thousands of different questions', () => {
  const some = ['three-port', 'two-two-ports', 'unvented-three-port', 'combi-two-zones'];
  const asked = (id: string, list: readonly Omit<Task, 'make'>[], seeds: number): string[] => {
    const maker = makers.find((one) => one.id === id);
    return maker
      ? list
          .flatMap((task) => itemsOf(maker, task, seeds))
          .map(({ ask, form, scene }) => JSON.stringify([ask, form, scene]))
      : [];
  };
  const layoutMakers = makers.filter(({ needs }) => needs === 'layout').map(({ id }) => id);
  const distinct = new Set([
    ...asked(
      'sum',
      sums.map(({ id }) => ({ sum: id })),
      100,
    ),
    ...layoutMakers.flatMap((id) =>
      asked(
        id,
        some.map((layout) => ({ layouts: [layout] })),
        45,
      ),
    ),
  ]);
  expect(distinct.size).toBeGreaterThan(2000);
});
