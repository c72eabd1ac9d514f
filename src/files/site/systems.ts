import type { System } from '../../engine/model/system.ts';
import { buildChecked } from '../build.ts';
import { type Job, parseJob } from '../job.ts';
import { parseSystem, type SystemFile } from '../system.ts';
import { filesIn } from './folder.ts';

/** A system as its reference page needs it: what its file says, made ready for the engine, and the jobs on it. */
export interface SystemPage extends SystemFile {
  readonly system: System;
  readonly jobs: readonly Job[];
}

/**
 * Every system of the course, in the order of the titles.
 * @throws FileError naming the file and the place when one does not parse
 */
export function systemPages(root?: string): SystemPage[] {
  const jobs = filesIn('content/jobs', '.yaml', root).map(({ name, text }) => parseJob(text, name));
  return filesIn('content/systems', '.yaml', root)
    .map(({ name, text }): SystemPage => {
      const file = parseSystem(text, name);
      const { id } = file.spec;
      return {
        ...file,
        system: buildChecked(file.spec, name),
        jobs: jobs.filter((job) => job.system === id),
      };
    })
    .sort((a, b) => a.spec.title.localeCompare(b.spec.title, 'en'));
}
