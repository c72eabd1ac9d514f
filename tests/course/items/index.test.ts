import { expect, test } from 'vitest';
import { makeItem, makers, parseAddress } from '../../../src/course/items/index.ts';
import { addressOf, type Task } from '../../../src/course/task.ts';
import { dataOf } from './circuit-support.ts';
import { shelf } from './support.ts';

const named: Readonly<Record<string, Omit<Task, 'make'>>> = {
  layout: { layouts: ['three-port'] },
  layouts: { layouts: ['three-port', 'two-two-ports'] },
  quiz: { quiz: 'safe-isolation' },
  sum: { sum: 'vessel' },
};

test('an address says which maker, on what, with which seed and how hard', () => {
  for (const { id: make, needs } of makers) {
    const task: Task = { make, ...named[needs] };
    expect(parseAddress(addressOf(task, 4711, 2))).toEqual({ task, seed: 4711, level: 2 });
  }
});

test('what is no address stands for nothing', () => {
  for (const address of [
    '',
    'live-terminals',
    'no-such/three-port/1/1',
    'live-terminals/three-port/1/4',
    'live-terminals/three-port/-1/1',
    'live-terminals/three-port/1/1/1',
    'live-terminals/../1/1',
  ])
    expect(parseAddress(address), address).toBeUndefined();
});

test('a seed that gives no fair question is passed over, and the address has the one that does', () => {
  const task: Task = { make: 'set-switches', layouts: ['three-port'] };
  const passed = Array.from({ length: 20 }, (_, seed) => makeItem(shelf, task, seed, 1)).filter(
    ({ id }, seed) => parseAddress(id)?.seed !== seed,
  );
  expect(passed.length).toBeGreaterThan(0);
  for (const item of passed) {
    const { seed = 0 } = parseAddress(item.id) ?? {};
    expect(dataOf(makeItem(shelf, task, seed, 1))).toEqual(dataOf(item));
  }
});

test('a task that names what is not there, or what has nothing of the kind, is an error that says so', () => {
  expect(() => makeItem(shelf, { make: 'no-such' }, 1, 1)).toThrow(/found "no-such"/);
  expect(() => makeItem(shelf, { make: 'valve-goes', layouts: ['no-such'] }, 1, 1)).toThrow(/no-such/);
  expect(() => makeItem(shelf, { make: 'valve-goes', layouts: ['combi-one-zone'] }, 1, 1)).toThrow(
    /valve-goes with combi-one-zone/,
  );
});
