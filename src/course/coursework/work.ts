import type { Act } from '../../engine/diagnose/act.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import type { Answer } from '../item.ts';
import type { Coursework, Learner } from './coursework.ts';

/** What was done for a slot, as it was done: it is graded from this, never from a mark. */
export type Work = {
  /** Id of the slot. */
  readonly slot: string;
  /** 1 for the first answer to the slot. */
  readonly attempt: number;
  /** When it was given, in milliseconds since 1970, and milliseconds from seeing the thing to answering. */
  readonly at: number;
  readonly took: number;
  /** How many helps were open: 0 to 3. */
  readonly hints: number;
  /** What the learner was told. Nobody trusts it: the mark book grades again. */
  readonly right: boolean;
} & (
  | { readonly kind: 'question'; readonly item: string; readonly answer: Answer }
  /** Every wire that was in place. */
  | { readonly kind: 'job'; readonly wires: readonly Wire[] }
  /** The acts of the visit, and the id of the candidate that was named. */
  | { readonly kind: 'visit'; readonly callout: string; readonly acts: readonly Act[]; readonly said: string }
);

/** One learner at one coursework on this device. */
export interface Sitting {
  /** `courseworkId CODE`. */
  readonly id: string;
  readonly coursework: Coursework;
  readonly learner: Learner;
  /** Milliseconds since 1970. */
  readonly begun: number;
  readonly at: number;
  /** In the order in which it was done. */
  readonly work: readonly Work[];
}

/** The name that a sitting is kept under. */
export const sittingId = (coursework: Pick<Coursework, 'id'>, learner: Pick<Learner, 'code'>): string =>
  `${coursework.id} ${learner.code}`;

/** What a learner hands in. */
export interface Result extends Omit<Sitting, 'id' | 'at'> {
  /** When the file was made, in milliseconds since 1970. */
  readonly made: number;
}
