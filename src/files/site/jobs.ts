import { type Job, parseJob } from '../job.ts';
import { parseSystem, type SystemFile } from '../system.ts';
import { filesIn } from './folder.ts';

/** A job with the system it is about. */
export interface JobPage extends SystemFile {
  readonly job: Job;
}

/**
 * Every job of the course with its system, in the order of the files' names.
 * @throws FileError naming the file and the place when one does not parse or names a system that is not there
 */
export function jobPages(root?: string): JobPage[] {
  const systems = new Map(
    filesIn('content/systems', '.yaml', root).map(({ name, text }) => {
      const system = parseSystem(text, name);
      return [system.spec.id, system];
    }),
  );
  return filesIn('content/jobs', '.yaml', root).map(({ name, text }) => {
    const job = parseJob(text, name);
    const system = systems.get(job.system);
    if (!system) throw new Error(`${name}: system "${job.system}" is not in content/systems`);
    return { job, ...system };
  });
}
