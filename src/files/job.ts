import * as z from 'zod/mini';
import type { Wire } from '../engine/model/wiring.ts';
import { FileError } from './error.ts';
import { expandLanding, id, landing, systemId } from './names.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, map, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

export const jobSchema = keys('a job: id, system, title, brief, summary', {
  id,
  system: systemId,
  title: text('a title'),
  brief: text('the brief: what the learner is told'),
  summary: text('one sentence for lists of jobs'),
  gives: z.exactOptional(
    keys('what is already wired: locked, wires', {
      locked: z.boolean({ error: 'true (sound and fixed) or false (to be questioned)' }),
      wires: landing,
    }),
  ),
  from: z.exactOptional(
    keys('what was here before: system, reference or wires, says', {
      system: systemId,
      reference: z.exactOptional(id),
      wires: z.exactOptional(landing),
      renames: z.exactOptional(map('renames: id of the old part: id of the new part', id, id)),
      says: text('a sentence: what was replaced'),
    }),
  ),
}).check(z.meta({ title: 'Job' }));

/** What a conversion starts from: an older system on the same site, and how it was wired. */
export interface Before {
  /** The id of the old system. */
  readonly system: string;
  /** Its wiring: one of its references by id, or wires of its own. Exactly one of the two is there. */
  readonly reference?: string;
  readonly wires?: readonly Wire[];
  /** Parts that stay under another id: old id to new id. */
  readonly renames: Readonly<Record<string, string>>;
  /** What was replaced. */
  readonly says: string;
}

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
  /** A conversion: the wires in place are those of the old system that still have both ends. */
  readonly from?: Before;
}

/** What a job asks for: told from what it starts with. */
export type JobKind = 'bare' | 'complete' | 'put-right' | 'convert';

export function kindOf({ gives, from }: Pick<Job, 'gives' | 'from'>): JobKind {
  if (from) return 'convert';
  if (!gives || gives.wires.length === 0) return 'bare';
  return gives.locked ? 'complete' : 'put-right';
}

/**
 * A job out of YAML text.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseJob(yaml: string, file: string): Job {
  const { gives, from, ...job } = checkShape(jobSchema, parseYaml(yaml, file), file);
  const fail = (place: string, expected: string, found: string) => {
    throw new FileError({ file, place: placeAt([place]), expected, found });
  };
  if (gives && from) fail('gives', 'either gives or from', 'both');
  if (from && (from.reference === undefined) === (from.wires === undefined))
    fail('from', 'either reference or wires', from.wires ? 'both' : 'neither');
  return {
    ...job,
    ...(gives ? { gives: { locked: gives.locked, wires: expandLanding(gives.wires) } } : {}),
    ...(from ? { from: before(from) } : {}),
  };
}

function before({ system, reference, wires, renames, says }: NonNullable<Shape['from']>): Before {
  return {
    system,
    ...(reference === undefined ? {} : { reference }),
    ...(wires ? { wires: expandLanding(wires) } : {}),
    renames: renames ?? {},
    says,
  };
}

type Shape = z.infer<typeof jobSchema>;
