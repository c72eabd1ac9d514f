import type { MadeCallout } from '../../../course/callouts/made.ts';
import type { Act } from '../../../engine/diagnose/act.ts';
import type { Callout } from '../../../engine/diagnose/callout.ts';
import type { Candidate } from '../../../engine/diagnose/candidate.ts';
import type { Step } from '../../../engine/diagnose/expert.ts';
import type { Level } from '../../../engine/diagnose/generate.ts';
import type { Verdict } from '../../../engine/diagnose/judge.ts';
import type { Entry } from '../../../engine/diagnose/replay.ts';
import type { SystemSpec } from '../../../engine/model/system.ts';
import type { DoubleFault } from '../../../files/double-faults.ts';
import type { LayoutFile } from '../../../files/layout-file.ts';

/** A callout as it travels to the worker: the system is built again there. */
export interface Sent extends Omit<Callout, 'system'> {
  readonly spec: SystemSpec;
  /** Double faults that may also be the answer. */
  readonly doubles: readonly Candidate[];
}

/** What is asked of the worker. */
export type Question =
  /** Begins the search at the door, by the complaints alone. The fault itself is not looked at. */
  | { readonly do: 'begin'; readonly callout: Sent }
  /** Goes on with what was done and what it showed. */
  | { readonly do: 'tell'; readonly entry: Entry }
  /** What a good engineer would do now. */
  | { readonly do: 'next' }
  /** What each entry told so far ruled out, in a sentence. */
  | { readonly do: 'cleared' }
  | { readonly do: 'judge'; readonly callout: Sent; readonly acts: readonly Act[]; readonly said: string }
  | {
      readonly do: 'make';
      readonly layout: LayoutFile;
      readonly doubles: readonly DoubleFault[];
      readonly seed: number;
      readonly level: Level;
    };

/** What is still possible. */
export interface Left {
  /** How many candidates. */
  readonly left: number;
  /** How many there were at the door. */
  readonly atFirst: number;
  /** While there are few: what they say, in groups that nothing can tell apart. */
  readonly groups?: readonly (readonly string[])[];
}

/** A callout that was made, without its system, and the double faults that may also be the answer. */
export interface Made extends Omit<MadeCallout, 'callout'> {
  readonly callout: Omit<Callout, 'system'>;
  readonly doubles: readonly Candidate[];
}

/** What each question is answered with. */
export interface Answers {
  readonly begin: Left;
  readonly tell: Left;
  readonly next: Step | undefined;
  readonly cleared: readonly string[];
  readonly judge: Verdict;
  readonly make: Made;
}

/** Each question has a number, and its answer the same. */
export type Asked = Question & { readonly id: number };
export type Answered =
  | { readonly id: number; readonly answer: Answers[Question['do']] }
  | { readonly id: number; readonly error: string };
