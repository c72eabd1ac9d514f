import fc from 'fast-check';
import { expect, test } from 'vitest';
import { forecast, MOST_DAYS } from '../../../src/course/progress/forecast.ts';
import { type Card, cardOf } from '../../../src/course/progress/revision.ts';
import { answers, DAY, START } from './support.ts';

const cards = fc
  .array(fc.tuple(fc.constantFrom('R', 'W', 'RR', 'RRR', 'HRW'), fc.integer({ min: 0, max: 60 })), {
    minLength: 1,
    maxLength: 8,
  })
  .map((given) => given.map(([letters, ago]) => cardOf(answers(letters, { at: START - ago * DAY })) as Card));

test('Revising never leaves less to recall on the day than not revising, and all are chances', () => {
  fc.assert(
    fc.property(cards, fc.integer({ min: 1, max: 200 }), fc.boolean(), (list, days, assessed) => {
      const { recall, reviews } = forecast(list, START + DAY, START + (1 + days) * DAY, assessed);
      expect(recall?.revised).toBeGreaterThanOrEqual((recall?.unrevised ?? 1) - 1e-9);
      expect(recall?.unrevised).toBeLessThanOrEqual((recall?.now ?? 0) + 1e-9);
      expect(recall?.byDay).toHaveLength(days + 1);
      const all = recall?.byDay.flatMap(({ revised, unrevised }) => [revised, unrevised]) ?? [];
      for (const chance of [recall?.now ?? 0, ...all]) {
        expect(chance).toBeGreaterThan(0);
        expect(chance).toBeLessThanOrEqual(1);
      }
      expect(reviews).toHaveLength(days);
      for (const count of reviews) expect(count).toBeLessThanOrEqual(list.length);
    }),
    { numRuns: 40 },
  );
});

test('What is overdue is asked today, and what was right comes back on its day', () => {
  const card = cardOf(answers('R', { at: START - 30 * DAY })) as Card;
  const { reviews } = forecast([card], START, START + 20 * DAY, false);
  expect(reviews[0]).toBe(1);
  expect(reviews.slice(1, 7)).toEqual([0, 0, 0, 0, 0, 0]);
});

test('An assessment date brings more reviews than none', () => {
  const list = [cardOf(answers('RRR')) as Card];
  const sum = (assessed: boolean) =>
    forecast(list, START + DAY, START + 41 * DAY, assessed).reviews.reduce((a, b) => a + b, 0);
  expect(sum(true)).toBeGreaterThan(sum(false));
});

test('Nothing met, nothing to forecast; a day long past or far off is no trouble', () => {
  expect(forecast([], START, START + 5 * DAY, true)).toEqual({ reviews: [0, 0, 0, 0, 0], recall: undefined });
  const list = [cardOf(answers('R')) as Card];
  expect(forecast(list, START, START - 9 * DAY, true).reviews).toEqual([]);
  expect(forecast(list, START, START + 5000 * DAY, true).reviews).toHaveLength(MOST_DAYS);
});
