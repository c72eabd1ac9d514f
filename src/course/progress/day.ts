import { DAY } from './answers.ts';

/**
 * Milliseconds since 1970 at the start of a day, in universal time.
 * @param text a day as `2027-03-31`
 * @returns undefined for anything that is not a day of the calendar
 */
export function timeOfDay(text: string): number | undefined {
  const [, y, m, d] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  const year = Number(y);
  const month = Number(m);
  const day = Number(d);
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const lengths = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  if (!(year >= 1970 && day >= 1 && day <= (lengths[month - 1] ?? 0))) return undefined;
  const before = year - 1;
  // Leap days of all years before this one, counted from the year 1; 1970 begins 719,162 days after that.
  const leaps = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  const inYear = lengths.slice(0, month - 1).reduce((sum, length) => sum + length, day - 1);
  return (before * 365 + leaps + inYear - 719_162) * DAY;
}
