import type { Layout } from '../../../course/layout.ts';
import { partsGone, startWiring, type WasHere } from '../../../files/conversion.ts';
import { type Job, parseJob } from '../../../files/job.ts';
import { writeJob } from '../../../files/job-write.ts';
import type { JobData } from '../../wiring/session.svelte.ts';
import { openText, packText } from '../pack.ts';
import { siteOf } from './troubles.ts';

/** A job as a piece of a link: its file, packed. */
export const packJob = (job: Job): string => packText(writeJob(job));

/** The job that a link carries, or a sentence that says why it cannot be read. */
export const unpackJob = (letters: string): Job | { readonly problem: string } => openText(letters, parseJob);

/**
 * A job as the wiring page takes it.
 * @param key the name under which the wires are kept: another than any of the course's
 * @throws FileError for a name that one of the systems does not have
 */
export function jobData(job: Job, key: string, now: Layout, old: Layout | undefined): JobData {
  const { title, brief, gives, from } = job;
  if (!from || !old)
    return { id: key, title, brief, given: gives?.wires ?? [], locked: gives?.locked ?? false };
  const { wires, gone } = startWiring(from, siteOf(old), now.system, `${job.id}.yaml`);
  const was: WasHere = { title: old.title, says: from.says, gone: partsGone(old.system, gone) };
  return { id: key, title, brief, given: wires, locked: false, was };
}
