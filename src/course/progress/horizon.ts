/** The best gap between two goes as a share of the days left, in the short run and a year ahead. */
const WEEKS = { days: 35, share: 0.2 };
const YEAR = { days: 365, share: 0.05 };

/**
 * The longest gap between two goes at one thing when it has to be known on a day.
 *
 * With weeks to go the best gap was about 20 % of the time left, with a year about 5 % (Cepeda and others 2008, more than
 * 1,350 people). Between the two the share falls evenly on logarithmic scales, which is our own reading. The time is
 * counted from the first go and not from each: gaps that widen or shrink were no better than even ones (Latimier and
 * others 2021), and shrinking ones would pile everything up before the day.
 * @param days from the first go to the day
 * @returns days, at least 1
 */
export function longestGap(days: number): number {
  const fall = Math.log(WEEKS.share / YEAR.share) / Math.log(YEAR.days / WEEKS.days);
  const within = Math.min(YEAR.days, Math.max(WEEKS.days, days));
  const share = WEEKS.share * (within / WEEKS.days) ** -fall;
  return Math.max(1, share * days);
}
