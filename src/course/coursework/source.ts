import type { Bench } from '../../engine/diagnose/bench.ts';
import type { Breach } from '../../engine/diagnose/breach.ts';
import type { Callout } from '../../engine/diagnose/callout.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { Judging } from '../../engine/grade/judge-for.ts';
import type { CalloutAddress } from '../callouts/address.ts';
import type { Shelf } from '../task.ts';
import type { JobGiven } from './job-variant.ts';

/** A callout made ready for judging: everything that does not depend on a visit to it. */
export interface Posed {
  readonly bench: Bench;
  readonly callout: Callout;
  /** Everything that may be wrong, the true fault among it. */
  readonly candidates: readonly Candidate[];
  /** Candidates, besides the fault, that nothing tells from it, where that is known already. */
  readonly alike?: readonly Candidate[];
}

/** Where grading finds what a coursework names. Each throws a RangeError for a name that is not there. */
export interface GradeSource extends Shelf {
  readonly job: (id: string) => JobGiven & { readonly system: string };
  /** The judge of a layout's system, made once. */
  readonly judging: (layout: string) => Judging;
  readonly visit: (callout: CalloutAddress) => Posed;
}

/** Whether a piece of work is about what was dealt to this learner at this attempt. */
export type Made = 'as dealt' | 'for another' | 'unknown';

/** What a piece of work is worth, graded anew. */
export interface Marked {
  readonly right: boolean;
  readonly made: Made;
  /** Ids of the rules of severity danger or fault that a wiring breaks, the gravest first. */
  readonly rules: readonly string[];
  /** Why it is not right, or not to be trusted, a sentence each; empty for right work of the learner's own. */
  readonly notes: readonly string[];
  /** Of a visit: breaches of safe working, in order. */
  readonly breaches?: readonly Breach[];
  /** Of a visit that names the fault: whether the readings rule everything else out. */
  readonly proved?: boolean;
}

/** Why something failed, in words. Data that is not what its format says makes the engine trip: that is told plainly. */
export const reasonOf = (error: unknown): string =>
  error instanceof TypeError || !(error instanceof Error)
    ? 'its data is not what the format says'
    : error.message;

/** Work that is not right, and why. */
export const refused = (made: Made, ...notes: string[]): Marked => ({ right: false, made, rules: [], notes });
