import type { Coursework, Learner } from '../../course/coursework/coursework.ts';
import { counts, type Outcome } from '../../course/coursework/outcome.ts';
import type { Slot } from '../../course/coursework/slots.ts';
import { type Sitting, sittingId, type Work } from '../../course/coursework/work.ts';
import type { Names } from './names.ts';

/** Work on one slot, in order. */
export const workOn = (work: readonly Work[], slot: string): readonly Work[] =>
  work.filter((one) => one.slot === slot);

/** The number of the attempt at a slot that comes next, from 1. */
export const attemptAt = (work: readonly Work[], slot: string): number =>
  1 + workOn(work, slot).reduce((most, { attempt }) => Math.max(most, attempt), 0);

/** Whether an answer to the slot would still count. */
export function canAnswer({ states }: Outcome, { id }: Pick<Slot, 'id'>): boolean {
  const state = states.get(id);
  return state === 'open' || state === 'tried';
}

/** How many attempts at a slot are left; none once it is right. */
export function leftAt(outcome: Outcome, slot: Slot, work: readonly Work[]): number {
  if (!canAnswer(outcome, slot)) return 0;
  return slot.task.attempts - new Set(workOn(work, slot.id).map(({ attempt }) => attempt)).size;
}

/** What can still be answered, from the slot after this one on, and then from the beginning. */
export function nextAfter(slots: readonly Slot[], outcome: Outcome, id?: string): Slot | undefined {
  const at = slots.findIndex((slot) => slot.id === id);
  const inOrder = [...slots.slice(at + 1), ...slots.slice(0, Math.max(0, at))];
  return inOrder.find((slot) => canAnswer(outcome, slot));
}

/** Whether a piece of work still has a go: within the rules, the slot not over, the attempt not used in another tab. */
export function mayAdd(
  outcome: Outcome,
  slot: Slot,
  done: readonly Work[],
  work: Pick<Work, 'attempt' | 'hints'>,
): boolean {
  const used = workOn(done, slot.id).some(({ attempt }) => attempt === work.attempt);
  return !used && canAnswer(outcome, slot) && counts(slot, work);
}

/** Whether both deal the same variants, so that work on the one fits the other. */
export const dealsAlike = (a: Coursework, b: Coursework): boolean =>
  a.seed === b.seed && a.variants === b.variants;

/** What a learner who opens a coursework sits down at. */
export type Begun =
  | { readonly kind: 'sitting'; readonly sitting: Sitting }
  /** The one kept has answers to other variants: the learner says which to go on with. */
  | { readonly kind: 'changed'; readonly kept: Sitting; readonly fresh: Sitting };

/**
 * The sitting that is kept, with the coursework as it is now, or a new one.
 * @param now milliseconds since 1970
 */
export function beginWith(
  kept: Sitting | undefined,
  coursework: Coursework,
  learner: Learner,
  now: number,
): Begun {
  const id = sittingId(coursework, learner);
  const fresh: Sitting = { id, coursework, learner, begun: now, at: now, work: [] };
  if (!kept) return { kind: 'sitting', sitting: fresh };
  if (!dealsAlike(kept.coursework, coursework))
    return kept.work.length > 0 ? { kind: 'changed', kept, fresh } : { kind: 'sitting', sitting: fresh };
  // Dates, rules and tasks may have been changed by the tutor; a name may have been added.
  return {
    kind: 'sitting',
    sitting: { ...kept, at: now, coursework, learner: { ...kept.learner, ...learner } },
  };
}

/** A thing to do that the course does not have, in words; undefined when it has everything. */
export function strangerIn(slots: readonly Slot[], { jobs, callouts, systems }: Names): string | undefined {
  for (const slot of slots) {
    if (slot.kind === 'job' && !Object.hasOwn(jobs, slot.job)) return `job “${slot.job}”`;
    if (slot.kind === 'callout' && !Object.hasOwn(callouts, slot.callout)) return `callout “${slot.callout}”`;
    if (slot.kind === 'fault' && !Object.hasOwn(systems, slot.system)) return `system “${slot.system}”`;
  }
  return undefined;
}
