import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { longestGap } from '../../../src/course/progress/horizon.ts';
import {
  type Card,
  cardOf,
  type Grade,
  gradeOf,
  recallAt,
  review,
} from '../../../src/course/progress/revision.ts';
import { answers, DAY, START, trial } from './support.ts';

/** Replays grades after so many days each. */
function replay(history: readonly (readonly [days: number, grade: Grade])[], assessment?: number): Card {
  let at = START;
  let card: Card | undefined;
  for (const [days, grade] of history) {
    at += days * DAY;
    card = review(card, at, grade, assessment);
  }
  if (!card) throw new Error('an empty history has no card');
  return card;
}

// Expected memory: ts-fsrs, packages/fsrs/__tests__/FSRS-6.test.ts, “memory state[short-term]”, which takes it from
// fsrs-rs, src/inference.rs.
test('A published FSRS-6 history leaves the memory that its publishers give', () => {
  const grades = ['again', 'good', 'good', 'good', 'good', 'good'] as const;
  const days = [0, 0, 1, 3, 8, 21];
  const { stability, difficulty } = replay(grades.map((grade, k) => [days[k] ?? 0, grade]));
  expect(stability).toBeCloseTo(53.62691, 4);
  expect(difficulty).toBeCloseTo(6.3574867, 4);
});

// Same file, “ivl_history”: from the second answer, each on its due day.
test('Right answers, each on its day, give the published gaps', () => {
  const gaps = [2, 11, 46, 163, 498];
  const history: [number, Grade][] = [
    [0, 'good'],
    [0, 'good'],
  ];
  for (const gap of gaps) {
    expect(replay(history).gap).toBe(gap);
    history.push([gap, 'good']);
  }
});

// Same file, “get retrievability”: a first answer of stability 8.2956 days is recalled with 0.9024733 after 8 days.
test('The estimate of recall is the published one', () => {
  const card: Card = { stability: 8.2956, difficulty: 1, first: START, last: START, due: START, gap: 8 };
  expect(recallAt(card, START + 8 * DAY)).toBeCloseTo(0.9024733, 6);
  expect(recallAt(card, START)).toBe(1);
});

test('Answers are graded by evidence: wrong, right with help, right without', () => {
  expect(answers('WHSR').map(gradeOf)).toEqual(['again', 'hard', 'hard', 'good']);
});

test('Nothing comes back in less than most of a day, and what was wrong comes back the next day', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('R', 'W', 'H'), { minLength: 1, maxLength: 12 }), (letters) => {
      const card = cardOf(answers(letters.join('')));
      expect(card?.gap).toBeGreaterThanOrEqual(1);
      expect((card?.due ?? 0) - (card?.last ?? 0)).toBeGreaterThanOrEqual((DAY * 2) / 3 - 1);
    }),
  );
  expect(cardOf(answers('W'))?.gap).toBe(1);
});

test('The same log gives the same card, in whatever order it is read', () => {
  const log = answers('RWHRRWR').map((one, k) => ({ ...one, at: START + k * 2.3 * DAY }));
  expect(cardOf([...log].reverse())).toEqual(cardOf(log));
});

test('A clock that has been set back cannot make time run backwards', () => {
  const log = [trial({ at: START }), trial({ at: START - 40 * DAY })];
  expect(() => cardOf(log)).not.toThrow();
  const card = cardOf(log);
  expect(card && recallAt(card, START - 100 * DAY)).toBe(1);
});

describe('an assessment date', () => {
  // Cepeda and others 2008: about 20 % of the time left for weeks, about 5 % for a year.
  test.each([
    [10, 2],
    [35, 7],
    [365, 18.25],
    [730, 36.5],
    [1, 1],
  ])('with %d days left allows gaps of %d days', (left, gap) => {
    expect(longestGap(left)).toBeCloseTo(gap, 6);
  });

  test('further away never allows a shorter gap', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 400, noNaN: true }),
        (a, more) => {
          expect(longestGap(a + more)).toBeGreaterThanOrEqual(longestGap(a) - 1e-9);
        },
      ),
    );
  });

  test('caps the gap, so that on the day nothing was last seen longer ago than that', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), fc.constantFrom<Grade>('again', 'hard', 'good')), {
          minLength: 1,
          maxLength: 10,
        }),
        fc.integer({ min: 1, max: 400 }),
        (history, left) => {
          const free = replay(history);
          const assessment = free.last + left * DAY;
          const capped = replay(history, assessment);
          const days = (assessment - START) / DAY;
          expect(capped.gap).toBeLessThanOrEqual(longestGap(days));
          expect(capped.gap).toBeLessThanOrEqual(free.gap);
          expect(capped.stability).toBe(free.stability);
        },
      ),
    );
  });

  test('keeps the gaps even: they do not shrink as the day comes near', () => {
    const assessment = START + 60 * DAY;
    const history: [number, Grade][] = [
      [0, 'good'],
      [0, 'good'],
      [2, 'good'],
    ];
    const gaps: number[] = [];
    for (let days = 2; days < 50; days += gaps.at(-1) ?? 0) {
      gaps.push(replay(history, assessment).gap);
      history.push([gaps.at(-1) ?? 0, 'good']);
    }
    expect(gaps.length).toBeGreaterThan(4);
    expect(new Set(gaps)).toEqual(new Set([Math.floor(longestGap(60))]));
  });

  test('caps nothing once it has passed', () => {
    const history: [number, Grade][] = [
      [0, 'good'],
      [3, 'good'],
      [11, 'good'],
    ];
    expect(replay(history, START + 5 * DAY)).toEqual(replay(history));
  });
});
