import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dailyCallout } from '../../../src/course/callouts/daily.ts';

const DAY = 86_400_000;
const dayAt = (number: number) => new Date(number * DAY).toISOString().slice(0, 10);
const systems = fc.uniqueArray(fc.stringMatching(/^[a-z]{1,6}$/), { minLength: 1, maxLength: 30 });
const days = fc.nat({ max: 40_000 });

describe('The callout of a day', () => {
  test('is the same for everybody, whatever order the systems come in', () => {
    fc.assert(
      fc.property(systems, days, (ids, day) => {
        expect(dailyCallout(dayAt(day), [...ids].reverse())).toEqual(dailyCallout(dayAt(day), ids));
      }),
    );
  });

  test('is never about the system of the day before, where there are two at least', () => {
    fc.assert(
      fc.property(
        systems.filter(({ length }) => length > 1),
        days,
        (ids, day) => {
          const [today, tomorrow] = [day, day + 1].map((one) => dailyCallout(dayAt(one), ids).system);
          expect(tomorrow).not.toBe(today);
        },
      ),
    );
  });

  test('comes to every system before it comes to any again', () => {
    fc.assert(
      fc.property(systems, fc.nat({ max: 900 }), (ids, round) => {
        const met = ids.map((_, k) => dailyCallout(dayAt(round * ids.length + k), ids).system);
        expect(met.sort()).toEqual([...ids].sort());
      }),
    );
  });

  test('is of every level in turn, and of a new seed each day', () => {
    const year = Array.from({ length: 365 }, (_, k) => dailyCallout(dayAt(20_000 + k), ['a', 'b', 'c']));
    for (const level of [1, 2, 3]) {
      // An even deal gives each level about 122 days of the year.
      const count = year.filter((one) => one.level === level).length;
      expect(count).toBeGreaterThan(90);
      expect(count).toBeLessThan(155);
    }
    expect(new Set(year.map(({ seed }) => seed)).size).toBe(365);
  });

  test('is refused for what is no day of the calendar, and without systems', () => {
    expect(() => dailyCallout('2027-02-30', ['a'])).toThrow('expected a day such as 2027-03-31');
    expect(() => dailyCallout('2027-03-31', [])).toThrow('expected a system, found none');
  });
});
