import { expect, test } from 'vitest';
import { shownFor } from '../../../src/ui/items/help.ts';

test('Help fades from the end: all but two steps, then half, then nothing', () => {
  expect(shownFor({ state: 'unseen', help: 'worked' }, 6, false)).toEqual({ example: false, steps: 4 });
  expect(shownFor({ state: 'shaky', help: 'partly' }, 6, false)).toEqual({ example: false, steps: 3 });
  expect(shownFor({ state: 'solid', help: 'own' }, 6, false)).toEqual({ example: false, steps: 0 });
});

test('After a failure a worked example of another variant comes first', () => {
  expect(shownFor({ state: 'shaky', help: 'worked' }, 6, false).example).toBe(true);
});

test('A learner who has switched help off gets none, whatever the mastery', () => {
  for (const help of ['worked', 'partly', 'own'] as const)
    expect(shownFor({ state: 'shaky', help }, 6, true)).toEqual({ example: false, steps: 0 });
});

test('The last step, which gives the answer, is never shown', () => {
  for (let steps = 1; steps < 12; steps++)
    for (const help of ['worked', 'partly', 'own'] as const)
      expect(shownFor({ state: 'unseen', help }, steps, false).steps).toBeLessThan(steps);
});
