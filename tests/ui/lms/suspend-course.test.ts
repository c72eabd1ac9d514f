import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { objectivesOf } from '../../../src/course/outline.ts';
import { byObjective, isRightAlone } from '../../../src/course/progress/answers.ts';
import { masteryOf } from '../../../src/course/progress/mastery.ts';
import { methodOf } from '../../../src/course/progress/mix.ts';
import { cardOf } from '../../../src/course/progress/revision.ts';
import type { Trial } from '../../../src/course/trial.ts';
import { loadOutline } from '../../../src/files/site/course.ts';
import { courseStanding } from '../../../src/ui/lms/course-standing.ts';
import { SUSPEND_12 } from '../../../src/ui/lms/limits/scorm-12.ts';
import { byHash } from '../../../src/ui/lms/suspend/bytes.ts';
import { packCourse, unpackCourse } from '../../../src/ui/lms/suspend/course.ts';

const outline = loadOutline();
const objectives = objectivesOf(outline).map(({ id, tasks: [task] }) => ({
  id,
  method: task ? methodOf(task) : 'visit',
}));
const routes = outline.routes.map(({ id }) => id);
const back = (text: string, here: readonly Trial[] = []) => unpackCourse(text, objectives, routes, here);

const MINUTE = 60_000;
const START = Date.UTC(2026, 10, 1);
const trial = (objective: number, minute: number, over: Partial<Trial> = {}): Trial => ({
  at: START + minute * MINUTE,
  objective: objectives[objective]?.id ?? '',
  item: `path-order/three-port/${minute * 1000 + objective}/1`,
  method: 'path-order',
  right: true,
  attempt: 1,
  hints: 0,
  shown: 0,
  took: 20_000,
  mode: 'lesson',
  ...over,
});

/** Any log: every objective, any number of answers, years long. */
const anyLog = fc
  .array(
    fc.record({
      objective: fc.nat(objectives.length - 1),
      minute: fc.nat(2_000_000),
      right: fc.boolean(),
      hints: fc.nat(3),
      shown: fc.nat(4),
      attempt: fc.constantFrom(1, 1, 1, 2),
      level: fc.constantFrom(1, 2, 3),
    }),
    { maxLength: 1500, size: 'max' },
  )
  .map((rows) =>
    rows.map(({ objective, minute, level, ...rest }, k) =>
      trial(objective, minute, { ...rest, item: `path-order/three-port/${k}/${level}` }),
    ),
  );
/** How each objective stands: what must never be lost. */
const statesOf = (trials: readonly Trial[]) =>
  objectives.map(({ id }) => masteryOf(byObjective(trials).get(id) ?? []).state);

describe('the course in suspend data', () => {
  test('it never exceeds what SCORM 1.2 keeps, and every objective stands as before', () => {
    fc.assert(
      fc.property(anyLog, fc.constantFrom(SUSPEND_12, 64_000), (trials, limit) => {
        const text = packCourse({ trials, choices: {} }, limit);
        expect(text.length).toBeLessThanOrEqual(limit);
        const kept = back(text);
        expect(statesOf(kept?.trials ?? [])).toEqual(statesOf(trials));
        expect(courseStanding(outline, kept?.trials ?? [])).toEqual(courseStanding(outline, trials));
      }),
      { numRuns: 40 },
    );
  });

  test('what has room comes back as it was: mastery, help, level, and the day it is due', () => {
    const log = objectives
      .slice(0, 12)
      .flatMap((_, k) =>
        [1, 2, 30, 2000, 30_000].map((minute, n) =>
          trial(k, minute + k, { right: (n + k) % 4 !== 0, hints: n === 1 ? 2 : 0, shown: n === 0 ? 3 : 0 }),
        ),
      );
    const kept = back(
      packCourse({ trials: log, choices: { route: routes[1] ?? '', assessment: '2027-03-31' } }, 4096),
    );
    expect(kept?.choices).toEqual({ route: routes[1], assessment: '2027-03-31' });
    for (const { id } of objectives.slice(0, 12)) {
      const [was, is] = [log, kept?.trials ?? []].map((one) => byObjective(one).get(id) ?? []);
      expect(masteryOf(is ?? [])).toEqual(masteryOf(was ?? []));
      const [cardWas, cardIs] = [cardOf(was ?? []), cardOf(is ?? [])];
      expect(Math.abs((cardWas?.due ?? 0) - (cardIs?.due ?? 0))).toBeLessThanOrEqual(MINUTE);
    }
  });

  test('a whole course, each objective asked eight times over a year, fits in 4,096 characters with times', () => {
    const log = objectives.flatMap((_, k) =>
      [0, 1, 2, 900, 10_000, 60_000, 200_000, 500_000].map((minute) => trial(k, minute + 31 * k)),
    );
    const text = packCourse({ trials: log, choices: {} }, SUSPEND_12);
    expect(text.length).toBeLessThanOrEqual(SUSPEND_12);
    const kept = back(text);
    expect(kept?.trials.length).toBeGreaterThanOrEqual(5 * objectives.length);
  });

  test('the same device gets nothing twice, and a device that knows some gets the rest', () => {
    fc.assert(
      fc.property(anyLog, fc.nat(100), (trials, share) => {
        const text = packCourse({ trials, choices: {} }, 64_000);
        expect(back(text, trials)?.trials).toEqual([]);
        const some = trials.filter((_, k) => k % 100 < share);
        const both = [...some, ...(back(text, some)?.trials ?? [])];
        // Brought once, it is there: a second time brings nothing.
        expect(back(text, both)?.trials).toEqual([]);
        expect(new Set(both.map(({ objective, item }) => `${objective} ${item}`)).size).toBe(both.length);
      }),
      { numRuns: 40 },
    );
  });

  test('of very little room the state of what was answered last is kept, as right or not', () => {
    const log = objectives.flatMap((_, k) => [1, 2, 3].map((n) => trial(k, n + 10 * k)));
    const kept = back(packCourse({ trials: log, choices: {} }, 100));
    expect(kept?.trials.length).toBeGreaterThan(20);
    expect(kept?.trials.every(isRightAlone)).toBe(true);
    expect(kept?.trials.some(({ objective }) => objective === objectives.at(-1)?.id)).toBe(true);
  });

  test('objectives that are gone are passed over, and damage is told from nothing', () => {
    const log = [trial(0, 1), trial(1, 2)];
    const text = packCourse({ trials: log, choices: {} }, 4096);
    const fewer = unpackCourse(text, objectives.slice(1), routes, []);
    expect(fewer?.trials.map(({ objective }) => objective)).toEqual([objectives[1]?.id]);
    for (const broken of [
      '',
      'AQID',
      text.slice(0, -3),
      `${text}AA`,
      '*'.repeat(40),
      text.replace(/^./, 'Z'),
    ])
      expect(back(broken), broken).toBeUndefined();
  });

  test('whatever the platform gives back, reading never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.base64String()), (text) => {
        expect(() => back(text)).not.toThrow();
      }),
    );
  });

  test('no two objectives of the course share a hash', () => {
    expect(byHash(objectives.map(({ id }) => id)).size).toBe(objectives.length);
  });
});
