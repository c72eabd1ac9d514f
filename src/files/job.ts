import * as z from 'zod/mini';
import type { Wire } from '../engine/model/wiring.ts';
import { expandLanding, id, landing } from './names.ts';
import { checkShape, keys, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

export const jobSchema = keys('a job: id, system, title, brief, summary', {
  id,
  system: id,
  title: text('a title'),
  brief: text('the brief: what the learner is told'),
  summary: text('one sentence for lists of jobs'),
  gives: z.exactOptional(
    keys('what is already wired: locked, wires', {
      locked: z.boolean({ error: 'true (sound and fixed) or false (to be questioned)' }),
      wires: landing,
    }),
  ),
}).check(z.meta({ title: 'Job' }));

/** A wiring job. */
export interface Job {
  readonly id: string;
  /** The id of the system that is wired. */
  readonly system: string;
  readonly title: string;
  readonly brief: string;
  readonly summary: string;
  /** Wires that are in place at the start; locked ones are sound and stay. */
  readonly gives?: { readonly locked: boolean; readonly wires: readonly Wire[] };
}

/**
 * A job out of YAML text.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseJob(yaml: string, file: string): Job {
  const { gives, ...job } = checkShape(jobSchema, parseYaml(yaml, file), file);
  return gives ? { ...job, gives: { locked: gives.locked, wires: expandLanding(gives.wires) } } : job;
}
