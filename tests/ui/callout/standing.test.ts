import { expect, test } from 'vitest';
import type { KeptVisit } from '../../../src/course/callouts/kept-visit.ts';
import type { Trial } from '../../../src/course/trial.ts';
import { standingOf } from '../../../src/ui/callout/list/standing.ts';
import { dayOf } from '../../../src/ui/callout/list/today.ts';

const callout = 'callout/cold-showers';
const trial = (at: number, right: boolean, hints = 0): Trial => ({
  at,
  objective: 'callout-no-hot-water',
  item: callout,
  method: 'callout',
  right,
  attempt: 1,
  hints,
  shown: 0,
  took: 1,
  mode: 'callout',
});
const visit = (done: boolean, acts: KeptVisit['acts']): KeptVisit => ({
  id: `${callout} 1`,
  callout,
  acts,
  wheels: [],
  at: 1,
  took: 1,
  done,
});

test('A callout is not tried until a visit to it is finished, and begun while one is left half done', () => {
  expect(standingOf([], [], callout)).toBe('unseen');
  expect(standingOf([], [visit(false, [])], callout)).toBe('unseen');
  expect(standingOf([], [visit(false, [{ do: 'isolate' }])], callout)).toBe('begun');
  expect(standingOf([trial(1, true)], [], 'callout/other')).toBe('unseen');
});

test('The latest finished visit counts, and only without help is it solid', () => {
  expect(standingOf([trial(2, true), trial(1, false)], [visit(true, [])], callout)).toBe('solid');
  expect(standingOf([trial(1, true), trial(2, false)], [], callout)).toBe('shaky');
  expect(standingOf([trial(1, true, 2)], [], callout)).toBe('shaky');
});

test('A day is the day of the learner’s own calendar', () => {
  expect(dayOf(new Date(2027, 2, 5, 0, 1))).toBe('2027-03-05');
  expect(dayOf(new Date(2027, 11, 31, 23, 59))).toBe('2027-12-31');
});
