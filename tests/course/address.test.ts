import { expect, test } from 'vitest';
import { circuits } from '../../src/course/items/circuits.ts';
import { makeItem, parseAddress } from '../../src/course/items/index.ts';
import { addressOf, type Level } from '../../src/course/task.ts';
import { dataOf } from './items/circuit-support.ts';
import { itemsOf, shelf } from './items/support.ts';

test('on every layout, the address of a question about a circuit gives that very question again', () => {
  let again = 0;
  for (const maker of circuits)
    for (const layout of shelf.layoutIds)
      for (const item of itemsOf(maker, { layouts: [layout] }, 6)) {
        const parsed = parseAddress(item.id);
        if (!parsed) throw new Error(`${item.id} is no address`);
        const { task, seed, level } = parsed;
        expect(dataOf(makeItem(shelf, task, seed, level)), item.id).toEqual(dataOf(item));
        again++;
      }
  expect(again).toBeGreaterThan(500);
});

test('layouts to choose from, what a task keeps to, and the largest seed stand in the address', () => {
  const tasks = [
    { make: 'path-order', layouts: ['three-port', 'two-two-ports', 'combi-two-zones'] },
    { make: 'place-lead', layouts: ['three-port'], only: ['cyl-stat', 'room-stat'] },
  ];
  for (const task of tasks)
    for (const seed of [0, 4711, 0xffffffff])
      for (const level of [1, 2, 3] as Level[])
        expect(parseAddress(addressOf(task, seed, level))).toEqual({ task, seed, level });
});

test('a seed of more than ten figures, or a level that there is not, is no address', () => {
  expect(parseAddress('live-terminals/three-port/42949672960/1')).toBeUndefined();
  expect(parseAddress('live-terminals/three-port/1/0')).toBeUndefined();
});
