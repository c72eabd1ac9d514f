import { fsrs, Rating } from 'ts-fsrs';
import type { Trial } from '../trial.ts';
import { DAY, freshAnswers, isRightAlone } from './answers.ts';
import { longestGap } from './horizon.ts';

/** Published default weights, no fuzz: the same log always gives the same days. */
const scheduler = fsrs({ enable_fuzz: false });

/** Due this much earlier than the gap says, so that nobody has to come back at the same hour of the day. */
const GRACE = DAY / 3;

/** What the memory of one objective is taken to be. An estimate by FSRS-6 with its default weights. */
export interface Card {
  /** Days after which recall is estimated at 90 %. */
  readonly stability: number;
  /** From 1, easy, to 10. */
  readonly difficulty: number;
  /** When it was asked first and last, and when it is due again: milliseconds since 1970. */
  readonly first: number;
  readonly last: number;
  readonly due: number;
  /** Whole days from the one to the other, at least 1. */
  readonly gap: number;
}

/** What an answer is worth as evidence of recall. */
export type Grade = 'again' | 'hard' | 'good';

const RATINGS = { again: Rating.Again, hard: Rating.Hard, good: Rating.Good } as const;

/** Wrong is “again”, right with help “hard”, right without help “good”. */
export const gradeOf = (trial: Trial): Grade =>
  trial.right ? (isRightAlone(trial) ? 'good' : 'hard') : 'again';

const daysBetween = (from: number, to: number) => Math.max(0, Math.round((to - from) / DAY));

/**
 * The card after an answer.
 * @param card undefined when this is the first answer
 * @param at milliseconds since 1970
 * @param assessment when it has to be known, likewise: gaps before that day are capped
 */
export function review(card: Card | undefined, at: number, grade: Grade, assessment?: number): Card {
  const days = card ? daysBetween(card.last, at) : 0;
  const { stability, difficulty } = scheduler.next_state(card ?? null, days, RATINGS[grade]);
  const own = scheduler.next_interval(stability, days);
  const first = card?.first ?? at;
  const isAhead = assessment !== undefined && assessment > at;
  const gap = isAhead ? Math.max(1, Math.min(own, Math.floor(longestGap((assessment - first) / DAY)))) : own;
  return { stability, difficulty, first, last: at, gap, due: at + gap * DAY - GRACE };
}

/**
 * The card of one objective, made anew from its log; undefined before the first answer.
 * @param trials of that objective, in any order
 */
export function cardOf(trials: readonly Trial[], assessment?: number): Card | undefined {
  let card: Card | undefined;
  for (const trial of freshAnswers(trials)) card = review(card, trial.at, gradeOf(trial), assessment);
  return card;
}

/** The estimated chance, 0 to 1, of recalling it at a time; one right after an answer. */
export const recallAt = ({ stability, last }: Card, at: number): number =>
  scheduler.forgetting_curve(Math.max(0, at - last) / DAY, stability);
