import { expect, test } from 'vitest';
import { order } from '../../../src/course/items/order.ts';
import { loadQuizzes } from '../../../src/files/site/quizzes.ts';
import { answersTo, itemsOf, shelf } from './support.ts';

const procedures = loadQuizzes().filter(({ procedure }) => procedure);
const stepsOf = (quiz: string) => shelf.quiz(quiz).procedure?.steps ?? [];

test('level says how many steps are shown, and they never stand in a right order', () => {
  for (const { id } of procedures) {
    for (const [level, count] of [
      [1, 4],
      [2, 6],
      [3, 99],
    ] as const) {
      const items = itemsOf(order, { quiz: id }, 30, level);
      expect(items.length, id).toBeGreaterThan(5);
      for (const item of items) {
        if (item.form.kind !== 'order') throw new Error('an order');
        expect(item.form.steps).toHaveLength(Math.min(count, stepsOf(id).length));
        expect(item.judge({ kind: 'order', steps: item.form.steps.map((step) => step.id) }).right).toBe(
          false,
        );
      }
    }
  }
});

/** Whether an order keeps every constraint, also those that go through steps that are not shown. */
function isSound(quiz: string, given: readonly string[]): boolean {
  const needs = (id: string): string[] =>
    (stepsOf(quiz).find((step) => step.id === id)?.after ?? []).flatMap(({ step }) => [step, ...needs(step)]);
  return given.every((id, at) => needs(id).every((before) => !given.slice(at).includes(before)));
}

test('an order is right exactly when it keeps every constraint, shown or between', () => {
  let others = 0;
  for (const { id } of procedures) {
    for (const item of itemsOf(order, { quiz: id }, 12)) {
      for (const answer of [...answersTo(item, 40), item.answer]) {
        if (answer.kind !== 'order') continue;
        const { right } = item.judge(answer);
        expect(right).toBe(isSound(id, answer.steps));
        if (right && JSON.stringify(answer) !== JSON.stringify(item.answer)) others++;
      }
    }
  }
  expect(others).toBeGreaterThan(10);
});

test('each pair that stands the wrong way round has its own note, which names both steps', () => {
  const [item] = itemsOf(order, { quiz: 'safe-isolation' }, 9, 3);
  const steps = stepsOf('safe-isolation').map(({ id }) => id);
  const swapped = steps.map((id) => (id === 'prove' ? 'test-supply' : id === 'test-supply' ? 'prove' : id));
  const { notes } = item?.judge({ kind: 'order', steps: swapped }) ?? { notes: [] };
  expect(notes.map(({ about }) => about)).toEqual(['test-supply']);
  expect(notes[0]?.cause).toContain('Prove the two-pole tester on a known live source');
  expect(notes[0]?.cause).toContain('A dead tester shows nothing on a live terminal too.');
});

test('a step left out, given twice or not offered is wrong', () => {
  const [item] = itemsOf(order, { quiz: 'safe-isolation' }, 9, 3);
  if (item?.answer.kind !== 'order') throw new Error('an order');
  const { steps } = item.answer;
  expect(item.judge({ kind: 'order', steps: steps.slice(1) }).notes[0]?.about).toBe(steps[0]);
  expect(item.judge({ kind: 'order', steps: [...steps, 'tea'] }).notes[0]?.about).toBe('tea');
  expect(item.judge({ kind: 'order', steps: [...steps, steps[0] ?? ''] }).right).toBe(false);
  expect(item.judge({ kind: 'number', typed: '1' }).right).toBe(false);
});
