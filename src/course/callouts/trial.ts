import type { Breach } from '../../engine/diagnose/breach.ts';
import type { Family } from '../../engine/diagnose/symptom.ts';
import type { Trial } from '../trial.ts';
import { type CalloutAddress, writeCallout } from './address.ts';
import { objectiveOf } from './objectives.ts';

/** What of a verdict counts for the log. */
export interface Judged {
  /** The fault named is the fault, or one that nothing tells from it. */
  readonly right: boolean;
  /** The readings taken rule everything else out. */
  readonly proved: boolean;
  readonly breaches: readonly { readonly breach: Breach }[];
}

/** A visit that is over. */
export interface Finished {
  readonly callout: CalloutAddress;
  readonly family: Family;
  readonly verdict: Judged;
  /** How many of the training wheels were used: 0 to 3. */
  readonly wheels: number;
  /** 1 for the first visit to this callout. */
  readonly attempt: number;
  /** Milliseconds since 1970, and from arrival to the diagnosis. */
  readonly at: number;
  readonly took: number;
}

/**
 * Breaches that alone make a visit wrong: each may put a hand on something live. The two others are slips in the order
 * of good work. Common practice.
 */
const GRAVE: ReadonlySet<Breach> = new Set<Breach>([
  'cover-off-live',
  'hand-in-live',
  'continuity-live',
  'not-identified',
  'not-locked',
  'tester-not-proved',
  'pairs-left-out',
]);

/** Whether a breach alone makes a visit wrong. */
export const isGrave = (breach: Breach): boolean => GRAVE.has(breach);

/** A visit as the log keeps it: right when the fault is named, proved, and found without grave breach. */
export const calloutTrial = ({ callout, family, verdict, wheels, attempt, at, took }: Finished): Trial => ({
  at,
  objective: objectiveOf(family),
  item: writeCallout(callout),
  method: 'callout',
  right: verdict.right && verdict.proved && !verdict.breaches.some(({ breach }) => isGrave(breach)),
  attempt,
  hints: Math.min(3, Math.max(0, wheels)),
  shown: 0,
  took,
  mode: 'callout',
});
