import type { Family } from '../../engine/diagnose/symptom.ts';

/** What goes with a callout besides the circuit: who rang, what they say, and what is told afterwards. */
export interface Story {
  /** Names the callout for ever: see `course/callouts/address.ts`. */
  readonly address: string;
  readonly title: string;
  readonly level: 1 | 2 | 3;
  /** What kind of complaint it is. */
  readonly family: Family;
  /** The customer's own words. */
  readonly customer: string;
  /** Who and what the engineer meets. */
  readonly house: string;
  /** What it was, how it comes about and how to put it right; a callout made by chance has none. */
  readonly after?: string;
}
