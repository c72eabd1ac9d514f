import type { Act } from '../../engine/diagnose/act.ts';

/** A visit to a callout: its acts are all of it, for what they showed is worked out by playing them again. */
export interface KeptVisit {
  /** The callout's address and when the visit began, in milliseconds since 1970: `callout/three-port/4711/2 1790000000000`. */
  readonly id: string;
  /** Address of the callout. */
  readonly callout: string;
  readonly acts: readonly Act[];
  /** Training wheels that were on at any time. */
  readonly wheels: readonly string[];
  /** Id of the candidate that the learner named. */
  readonly said?: string;
  /** When it was last touched, in milliseconds since 1970, and milliseconds spent on it. */
  readonly at: number;
  readonly took: number;
  readonly done: boolean;
}
