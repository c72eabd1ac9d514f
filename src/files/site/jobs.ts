import type { Wire } from '../../engine/model/wiring.ts';
import { buildChecked } from '../build.ts';
import { partsGone, startWiring, type WasHere } from '../conversion.ts';
import { type Job, parseJob } from '../job.ts';
import { parseSystem, type SystemFile } from '../system.ts';
import { filesIn } from './folder.ts';

/** A job with the system it is about. */
export interface JobPage extends SystemFile {
  readonly job: Job;
  /** Wires that are in place at the start. */
  readonly given: readonly Wire[];
  /** Only a conversion has it. */
  readonly was?: WasHere;
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
  const find = (id: string, name: string): SystemFile => {
    const system = systems.get(id);
    if (!system) throw new Error(`${name}: system "${id}" is not in content/systems`);
    return system;
  };
  return filesIn('content/jobs', '.yaml', root).map(({ name, text }): JobPage => {
    const job = parseJob(text, name);
    const system = find(job.system, name);
    if (!job.from) return { job, given: job.gives?.wires ?? [], ...system };
    const old = find(job.from.system, name);
    const site = { system: buildChecked(old.spec, name), references: old.references };
    const { wires, gone } = startWiring(job.from, site, buildChecked(system.spec, name), name);
    const was = {
      title: old.spec.title,
      says: job.from.says,
      gone: partsGone(site.system, gone),
    };
    return { job, given: wires, was, ...system };
  });
}
