import { DAY } from './answers.ts';
import { type Card, recallAt, review } from './revision.ts';

/** What lies ahead if every review is taken on its day and goes right: an estimate. */
export interface Forecast {
  /** Reviews on each day: the first is the 24 hours from now, with what is overdue. */
  readonly reviews: readonly number[];
  /** Undefined when no objective has been met. */
  readonly recall: Recall | undefined;
}

/** Mean estimated chance of recall, 0 to 1, over the objectives met: now, and at the end with and without revision. */
export interface Recall {
  readonly now: number;
  readonly revised: number;
  readonly unrevised: number;
  /** The same after 0, 1, 2 … days, up to the end. */
  readonly byDay: readonly { readonly revised: number; readonly unrevised: number }[];
}

/** Nobody plans further ahead than this many days. */
export const MOST_DAYS = 400;

/**
 * @param cards of the objectives met
 * @param now and @param until milliseconds since 1970; what lies later than `MOST_DAYS` ahead is left out
 * @param assessment true when `until` is the day of the assessment, which caps the gaps
 */
export function forecast(cards: readonly Card[], now: number, until: number, assessment: boolean): Forecast {
  const days = Math.min(MOST_DAYS, Math.max(0, Math.ceil((until - now) / DAY)));
  const end = Math.min(until, now + days * DAY);
  const reviews = new Array<number>(days).fill(0);
  const courses = cards.map((card) => {
    const course = [card];
    let current = card;
    for (let at = Math.max(now, card.due); at < end; at = current.last + current.gap * DAY) {
      const day = Math.floor((at - now) / DAY);
      reviews[day] = (reviews[day] ?? 0) + 1;
      current = review(current, at, 'good', assessment ? until : undefined);
      course.push(current);
    }
    return course;
  });
  if (cards.length === 0) return { reviews, recall: undefined };
  const byDay = Array.from({ length: days + 1 }, (_, day) => {
    const at = Math.max(now, Math.min(end, now + day * DAY));
    const held = courses.map((course) => course.findLast(({ last }) => last <= at) ?? course[0]);
    return { revised: meanAt(held, at), unrevised: meanAt(cards, at) };
  });
  const last = byDay.at(-1) ?? { revised: 0, unrevised: 0 };
  return { reviews, recall: { now: meanAt(cards, now), ...last, byDay } };
}

const meanAt = (cards: readonly (Card | undefined)[], at: number): number =>
  cards.reduce((sum, card) => sum + (card ? recallAt(card, at) : 0), 0) / cards.length;
