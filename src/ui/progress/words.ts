import type { Counts, ObjectiveState } from '../../course/progress/course-state.ts';

/** How an objective is shown: as on the map of the course, each with a shape, a word and a colour. */
export type Mark = 'unseen' | 'shaky' | 'solid' | 'due';

/** A solid one that is due has the clock; a shaky one stays shaky, for it is to be learnt before it is revised. */
export const markOf = ({ mastery, due }: ObjectiveState): Mark =>
  due && mastery.state === 'solid' ? 'due' : mastery.state;

const WORDS = { unseen: 'not tried', shaky: 'shaky', solid: 'solid' } as const;

/** The state in words: “solid, due”. */
export const stateWords = ({ mastery, due }: ObjectiveState): string =>
  WORDS[mastery.state] + (due ? ', due' : '');

/** “3 answers”, “1 answer”. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** How a part stands: “2 of 4 solid, 1 due”. */
export const partWords = ({ solid, shaky, unseen, due }: Counts): string =>
  [
    `${solid} of ${solid + shaky + unseen} solid`,
    ...(shaky > 0 ? [`${shaky} shaky`] : []),
    ...(due > 0 ? [`${due} due`] : []),
  ].join(', ');

/** “82 %”, never broken over two lines. */
export const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;

/** An estimate of a chance: nothing is ever sure. */
export const chance = (share: number): string => percent(Math.min(0.99, Math.max(0.01, share)));

const dayFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });
/** “31 March”. @param at milliseconds since 1970 */
export const dayWords = (at: number): string => dayFormat.format(at);

/** When something falls due, seen from now: “now”, “tomorrow”, “on 31 March”. */
export function dueWords(due: number, now: number): string {
  if (due <= now) return 'now';
  const midnight = new Date(now).setHours(24, 0, 0, 0);
  if (due < midnight) return 'later today';
  return due < midnight + 86_400_000 ? 'tomorrow' : `on ${dayWords(due)}`;
}

/** What is known of one objective, in sentences. */
export function aboutObjective(state: ObjectiveState, now: number): string {
  const { mastery, card, recall } = state;
  if (mastery.state === 'unseen') return 'Not tried yet.';
  const right = `${mastery.right} of ${mastery.fresh} right without help.`;
  const guess = recall === undefined ? '' : ` Chance that you still know it: about ${chance(recall)}.`;
  const due = card ? ` To revise ${dueWords(card.due, now)}.` : '';
  return `${mastery.state === 'solid' ? 'Solid' : 'Shaky'}: ${right}${guess}${due}`;
}
