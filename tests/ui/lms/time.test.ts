import fc from 'fast-check';
import { expect, test } from 'vitest';
import { duration, moment, timespan12 } from '../../../src/ui/lms/time.ts';

test('a span of SCORM 1.2 has four digits of hours and hundredths', () => {
  expect(timespan12(3_723_450)).toBe('0001:02:03.45');
  expect(timespan12(0)).toBe('0000:00:00.00');
  expect(timespan12(1e15)).toBe('9999:59:59.99');
});

test('a duration of ISO 8601 leaves out what is nought, but for seconds', () => {
  expect(duration(3_723_450)).toBe('PT1H2M3.45S');
  expect(duration(60_000)).toBe('PT1M0S');
  expect(duration(0)).toBe('PT0S');
});

test('both say the same length, to a hundredth of a second', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 3_000_000_000 }), (length) => {
      const [h = 0, m = 0, s = 0] = timespan12(length).split(':').map(Number);
      expect(Math.round((h * 3600 + m * 60 + s) * 100)).toBe(Math.floor(length / 10));
      const [, hours = 0, minutes = 0, seconds = 0] = (
        /^PT(?:(\d+)H)?(?:(\d+)M)?([\d.]+)S$/.exec(duration(length)) ?? []
      ).map((part) => Number(part ?? 0));
      expect(Math.round((hours * 3600 + minutes * 60 + seconds) * 100)).toBe(Math.floor(length / 10));
    }),
  );
});

test('a moment is in UTC', () => {
  expect(moment(Date.UTC(2027, 2, 31, 9, 5, 7, 940))).toBe('2027-03-31T09:05:07.9Z');
});
