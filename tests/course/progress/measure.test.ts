import { expect, test } from 'vitest';
import { measureOf } from '../../../src/course/progress/measure.ts';
import { answers, DAY, START, trial } from './support.ts';

test('The first answer is set against the latest, and what came a week later is counted apart', () => {
  const log = [
    ...answers('WWR', { objective: 'a' }),
    trial({ objective: 'a', at: START + 8 * DAY }),
    ...answers('R', { objective: 'b' }),
    trial({ objective: 'b', at: START + 7 * DAY, right: false }),
    trial({ objective: 'b', at: START + 9 * DAY }),
    ...answers('R', { objective: 'met-once' }),
  ];
  expect(measureOf(log)).toMatchObject({
    first: { answers: 2, right: 1 },
    latest: { answers: 2, right: 2 },
    delayed: { answers: 2, right: 1 },
    enough: false,
  });
});

test('A question asked before the teaching is where the learner started', () => {
  const before = trial({ objective: 'a', mode: 'before', right: false });
  const log = [before, ...answers('RR', { objective: 'a', at: START + DAY })];
  expect(measureOf(log)).toMatchObject({ first: { answers: 1, right: 0 }, latest: { answers: 1, right: 1 } });
});

test('Hints for each right answer are counted in the earlier and the later half', () => {
  const log = [
    trial({ hints: 2 }),
    trial({ at: START + 1, hints: 1, right: false }),
    trial({ at: START + 2, hints: 1 }),
    trial({ at: START + 3 }),
  ];
  expect(measureOf(log).hintsPerSuccess).toEqual({ earlier: 3, later: 0.5 });
});

test('It says something once ten objectives have been asked twice', () => {
  const log = Array.from({ length: 10 }, (_, k) => answers('WR', { objective: `o${k}` }));
  expect(measureOf(log.flat()).enough).toBe(true);
  expect(measureOf(log.slice(1).flat()).enough).toBe(false);
  expect(measureOf([])).toMatchObject({ first: { answers: 0, right: 0 }, enough: false });
});
