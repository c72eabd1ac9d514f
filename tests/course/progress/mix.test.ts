import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { courseState } from '../../../src/course/progress/course-state.ts';
import { dueFirst, methodOf, mixedSet, revisionSet, separate } from '../../../src/course/progress/mix.ts';
import { makeRandom } from '../../../src/course/random.ts';
import type { Task } from '../../../src/course/task.ts';
import { answers, DAY, outlineOf, START } from './support.ts';

const tasks: readonly Task[] = [
  { make: 'path-order', layouts: ['three-port'] },
  { make: 'where-stops', layouts: ['three-port'] },
  { make: 'sum', sum: 'fuse-current' },
  { make: 'sum', sum: 'expansion' },
  { make: 'choice', quiz: 'cores' },
];

/** A learner somewhere in a course of up to 12 objectives, each with up to three tasks. */
const learner = fc
  .array(
    fc.tuple(
      fc.subarray([...tasks], { minLength: 1, maxLength: 3 }),
      fc.constantFrom('', 'R', 'W', 'RRR', 'RRRWW'),
    ),
    { minLength: 1, maxLength: 12 },
  )
  .map((given) => {
    const lessons = Object.fromEntries(given.map(([own], k) => [`o${k}`, own]));
    const log = given.flatMap(([, letters], k) => answers(letters, { objective: `o${k}` }));
    return courseState(outlineOf({ part: lessons }), log, START + 2 * DAY).objectives;
  });

const neighbours = (methods: readonly string[]) =>
  methods.filter((method, k) => k > 0 && method === methods[k - 1]);

test('Sums and quizzes are different methods, though one maker makes them', () => {
  expect(new Set(tasks.map(methodOf)).size).toBe(tasks.length);
});

// Mixed practice: 72 % against 38 % on a delayed test nobody had announced (Rohrer and others 2014).
test('In a mixed set no two neighbours need the same method, and it is as long as asked', () => {
  fc.assert(
    fc.property(learner, fc.integer({ min: 1, max: 20 }), fc.integer(), (among, most, seed) => {
      const set = mixedSet(among, most, makeRandom(seed));
      expect(neighbours(set.map(({ task }) => methodOf(task)))).toEqual([]);
      const methods = new Set(among.flatMap(({ objective }) => objective.tasks.map(methodOf)));
      expect(set.length).toBe(methods.size > 1 ? most : 1);
      for (const { objective, task } of set) expect(objective.tasks).toContain(task);
    }),
  );
});

test('A mixed set takes what is due before what is shaky, unseen or solid', () => {
  const lessons = Object.fromEntries(
    ['due', 'shaky', 'unseen', 'solid'].map((id, k) => [id, [tasks[k] ?? { make: 'x' }]]),
  );
  const log = [
    ...answers('RRR', { objective: 'due', at: START - 300 * DAY }),
    ...answers('W', { objective: 'shaky' }),
    ...answers('RRR', { objective: 'solid' }),
  ];
  const { objectives } = courseState(outlineOf({ part: lessons }), log, START + 3_600_000);
  const set = mixedSet(objectives, 4, makeRandom(1));
  expect(set.map(({ objective }) => objective.id)).toEqual(['due', 'shaky', 'unseen', 'solid']);
});

describe('a revision set', () => {
  test('asks only what is due, each once, and no two neighbours alike', () => {
    fc.assert(
      fc.property(learner, fc.integer({ min: 1, max: 12 }), fc.integer(), (among, most, seed) => {
        const set = revisionSet(among, most, makeRandom(seed));
        const ids = set.map(({ objective }) => objective.id);
        const due = among.filter((state) => state.due).map(({ objective }) => objective.id);
        expect(due).toEqual(expect.arrayContaining(ids));
        expect(new Set(ids).size).toBe(ids.length);
        expect(set.length).toBeLessThanOrEqual(most);
        expect(set.length > 0).toBe(due.length > 0);
        expect(neighbours(set.map(({ task }) => methodOf(task)))).toEqual([]);
      }),
    );
  });

  test('leaves out kinds of fault that are due: they are asked by a visit, not by a question', () => {
    const log = [
      ...answers('RRR', { objective: 'o0' }),
      ...answers('RRR', { objective: 'callout-no-heating', mode: 'callout' }),
    ];
    const state = courseState(outlineOf({ part: { o0: tasks } }), log, START + 400 * DAY);
    const all = [...state.callouts.objectives, ...state.objectives];
    const asked = (set: readonly { objective: { id: string } }[]) => set.map(({ objective }) => objective.id);
    expect(asked(revisionSet(all, 9, makeRandom(1)))).toEqual(['o0']);
    expect(new Set(asked(mixedSet(all, 9, makeRandom(1))))).toEqual(new Set(['o0']));
    expect(asked(dueFirst(all)).sort()).toEqual(['callout-no-heating', 'o0']);
  });
});

test('A list is parted whole whenever it can be, and else loses only the surplus of one kind', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 14 }), (list) => {
      const parted = separate(list, (one) => one);
      expect(neighbours(parted)).toEqual([]);
      const most = Math.max(
        0,
        ...['a', 'b', 'c', 'd'].map((kind) => list.filter((one) => one === kind).length),
      );
      const surplus = Math.max(0, most - (list.length - most) - 1);
      expect(parted.length).toBe(list.length - surplus);
    }),
  );
});
