import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { courseState } from '../../../src/course/progress/course-state.ts';
import { nextThing } from '../../../src/course/progress/next.ts';
import { answers, DAY, outlineOf, START } from './support.ts';

const task = [{ make: 'path-order', layouts: ['three-port'] }];
const outline = outlineOf({ one: { a: task, b: task }, two: { c: task } });

test('Lessons and parts are solid when all of them is, unseen when nothing is met, else shaky', () => {
  const log = [...answers('RRR', { objective: 'a' }), ...answers('W', { objective: 'b' })];
  const state = courseState(outline, log, START + 3_600_000);
  expect(state.lessons.map((lesson) => lesson.state)).toEqual(['solid', 'shaky', 'unseen']);
  expect(state.parts.map((part) => part.state)).toEqual(['shaky', 'unseen']);
  expect(state).toMatchObject({ state: 'shaky', solid: 1, shaky: 1, unseen: 1, due: 0 });
});

test('What was answered falls due in time, and its recall is an estimate between 0 and 1', () => {
  const log = answers('RRR', { objective: 'a' });
  const later = courseState(outline, log, START + 400 * DAY);
  expect(later).toMatchObject({ due: 1 });
  expect(later.objectives[0]?.recall).toBeGreaterThan(0);
  expect(later.objectives[0]?.recall).toBeLessThan(0.9);
  expect(later.objectives[1]?.recall).toBeUndefined();
});

test('The states of all objectives add up, whatever the log holds', () => {
  const letters = fc.array(fc.constantFrom('R', 'W', 'H', 'S'), { maxLength: 8 });
  fc.assert(
    fc.property(letters, letters, letters, (a, b, gone) => {
      const log = [
        ...answers(a.join(''), { objective: 'a' }),
        ...answers(b.join(''), { objective: 'c' }),
        ...answers(gone.join(''), { objective: 'no-longer-in-the-course' }),
      ];
      const { unseen, shaky, solid, objectives, parts } = courseState(outline, log, START + 9 * DAY);
      expect(unseen + shaky + solid).toBe(3);
      expect(objectives).toHaveLength(3);
      expect(parts.reduce((sum, part) => sum + part.due, 0)).toBe(objectives.filter(({ due }) => due).length);
    }),
  );
});

test('Faults found on visits have states of their own, beside the lessons', () => {
  const log = [
    ...answers('RRR', { objective: 'callout-no-heating', mode: 'callout' }),
    ...answers('W', { objective: 'callout-no-hot-water', mode: 'callout' }),
  ];
  const { callouts, ...course } = courseState(outline, log, START + 400 * DAY);
  expect(callouts).toMatchObject({ solid: 1, shaky: 1, due: 2 });
  expect(
    callouts.objectives.find(({ objective }) => objective.id === 'callout-no-heating')?.mastery,
  ).toMatchObject({
    state: 'solid',
    help: 'own',
  });
  // The course's own counts are those of its lessons.
  expect(course).toMatchObject({ state: 'unseen', unseen: 3, due: 0 });
});

describe('Continue leads', () => {
  const at = (
    log: Parameters<typeof courseState>[1],
    standing?: Parameters<typeof nextThing>[1],
    now = START + 3_600_000,
  ) => nextThing(courseState(outline, log, now), standing);

  test('to the first lesson at the very start', () => {
    expect(at([])).toMatchObject({ kind: 'start', path: '/lessons/about-a/' });
  });
  test('to the first lesson of the route that is followed', () => {
    const route = { id: 'r', title: '', says: '', lessons: ['about-c', 'about-a'] };
    expect(at([], { route })).toMatchObject({ kind: 'start', path: '/lessons/about-c/' });
  });
  test('back to the lesson that was left, wherever the site lives', () => {
    const last = '/college/lessons/about-c/';
    expect(at(answers('R', { objective: 'a' }), { last })).toMatchObject({
      kind: 'lesson',
      path: '/lessons/about-c/',
    });
  });
  test('to revision when something is due', () => {
    const log = answers('RRR', { objective: 'a' });
    expect(at(log, { last: '/lessons/about-a/' }, START + 300 * DAY)).toMatchObject({
      kind: 'revise',
      path: '/practice/#revise',
    });
  });
  test('to a visit when a kind of fault is due, and to lessons that are due before that', () => {
    const visits = answers('RRR', { objective: 'callout-no-heating', mode: 'callout' });
    const later = START + 300 * DAY;
    expect(at(visits, { last: '/practice/' }, later)).toMatchObject({
      kind: 'visit',
      path: '/practice/#visit=no-heating',
      why: 'One kind of fault is due.',
    });
    expect(at([...visits, ...answers('RRR', { objective: 'a' })], { last: '/practice/' }, later).kind).toBe(
      'revise',
    );
  });
  test('to the first lesson that is not solid', () => {
    expect(at(answers('RRR', { objective: 'a' }))).toMatchObject({
      kind: 'lesson',
      path: '/lessons/about-b/',
    });
  });
  test('to a mixed set when every lesson is solid', () => {
    const log = ['a', 'b', 'c'].flatMap((objective) => answers('RRR', { objective }));
    expect(at(log)).toMatchObject({ kind: 'mixed', path: '/practice/#mixed' });
  });
});
