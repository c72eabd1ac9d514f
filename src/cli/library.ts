import { readdirSync } from 'node:fs';
import type { System } from '../engine/model/system.ts';
import { buildChecked } from '../files/build.ts';
import { FileError, show } from '../files/error.ts';
import { type Job, parseJob } from '../files/job.ts';
import { oneOf } from '../files/suggest.ts';
import { parseSystem, type SystemFile } from '../files/system.ts';
import { readText } from './load.ts';

/** A system file and the system made ready for the engine. */
export interface LoadedSystem extends SystemFile {
  readonly system: System;
}

/** The jobs and systems of a content folder, each read when first asked for. */
export interface Library {
  readonly jobIds: readonly string[];
  readonly systemIds: readonly string[];
  /** Both throw a FileError when their file is not sound, or when there is none: then it names `asker`. */
  readonly job: (id: string, asker: Asker) => Job;
  readonly system: (id: string, asker: Asker) => LoadedSystem;
  /** The name of a file in messages. */
  readonly nameOf: (folder: 'jobs' | 'systems', id: string) => string;
}

/** The file and the place in it that name a job or a system. */
export interface Asker {
  readonly file: string;
  readonly place: string;
}

const ENDING = '.yaml';

/** The course's own content, wherever the command is started. */
const CONTENT = new URL('../../content/', import.meta.url);

/** Finds the files of a content folder, given as a URL that ends in a slash. */
export function openLibrary(content: URL = CONTENT): Library {
  const ids = (folder: string): string[] =>
    readdirSync(new URL(`${folder}/`, content))
      .filter((name) => name.endsWith(ENDING))
      .map((name) => name.slice(0, -ENDING.length))
      .sort();
  const jobIds = ids('jobs');
  const systemIds = ids('systems');
  const jobs = new Map<string, Job>();
  const systems = new Map<string, LoadedSystem>();
  const nameOf = (folder: string, id: string) => `content/${folder}/${id}${ENDING}`;
  const text = (folder: string, id: string) =>
    readText(new URL(`${folder}/${encodeURIComponent(id)}${ENDING}`, content), nameOf(folder, id));
  // Only names out of the listing are opened, so no id leads out of the folder.
  const known = (id: string, all: readonly string[], asker: Asker) => {
    if (!all.includes(id)) throw new FileError({ ...asker, expected: oneOf(id, all), found: show(id) });
  };

  return {
    jobIds,
    systemIds,
    nameOf,
    job(id, asker) {
      const ready = jobs.get(id);
      if (ready) return ready;
      known(id, jobIds, asker);
      const job = parseJob(text('jobs', id), nameOf('jobs', id));
      jobs.set(id, job);
      return job;
    },
    system(id, asker) {
      const ready = systems.get(id);
      if (ready) return ready;
      known(id, systemIds, asker);
      const file = nameOf('systems', id);
      const parsed = parseSystem(text('systems', id), file);
      const loaded = { ...parsed, system: buildChecked(parsed.spec, file) };
      systems.set(id, loaded);
      return loaded;
    },
  };
}
