import fc from 'fast-check';
import { expect, test } from 'vitest';
import { timeOfDay } from '../../../src/course/progress/day.ts';

test('A day of the calendar is the time at which it starts, as the platform counts', () => {
  fc.assert(
    fc.property(fc.date({ min: new Date(0), max: new Date('2399-12-31'), noInvalidDate: true }), (date) => {
      const text = date.toISOString().slice(0, 10);
      expect(timeOfDay(text)).toBe(Date.parse(text));
    }),
  );
});

test.each(['', '2027-02-29', '2027-13-01', '2027-00-10', '2027-04-31', '27-04-01', '2027-4-1', '1969-12-31'])(
  '“%s” is no day that an assessment can have',
  (text) => {
    expect(timeOfDay(text)).toBeUndefined();
  },
);
