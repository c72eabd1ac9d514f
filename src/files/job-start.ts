import { type JobGiven, type JobVariant, jobVariant } from '../course/coursework/job-variant.ts';
import type { Layout } from '../course/layout.ts';
import { type Judging, judgeFor } from '../engine/grade/judge-for.ts';
import type { Wire } from '../engine/model/wiring.ts';
import type { WasHere } from './conversion.ts';
import { type Job, kindOf } from './job.ts';

/** A job as it travels to the browser: what it says, and the wires that it starts with. */
export interface JobStart extends JobGiven {
  readonly id: string;
  /** Id of the layout. */
  readonly system: string;
  readonly title: string;
  readonly brief: string;
  readonly summary: string;
  /** A conversion: what was here before; the wires given are the old ones. */
  readonly was?: WasHere;
}

/**
 * What a job starts with.
 * @param given its wires in place: of a conversion, the old ones that still have both ends
 */
export const jobStart = (job: Job, given: readonly Wire[], was?: WasHere): JobStart => ({
  id: job.id,
  system: job.system,
  title: job.title,
  brief: job.brief,
  summary: job.summary,
  kind: kindOf(job),
  given,
  locked: job.gives?.locked ?? false,
  ...(was && { was }),
});

/**
 * A job as one learner gets it: see `jobVariant`.
 * @param judge of the layout's system, for whoever has one already
 */
export const variantOf = (
  job: JobGiven,
  layout: Layout,
  seed: number,
  judge: Judging['judge'] = judgeFor(layout.system).judge,
): JobVariant => jobVariant(job, layout, judge, seed);
