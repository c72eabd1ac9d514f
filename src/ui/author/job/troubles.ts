import type { Layout } from '../../../course/layout.ts';
import { FileError } from '../../../files/error.ts';
import { jobSchema, parseJob } from '../../../files/job.ts';
import { checkJob, type Site } from '../../../files/job-fit.ts';
import { writeJob } from '../../../files/job-write.ts';
import { placeAt } from '../../../files/place.ts';
import { shapeTroubles } from '../../../files/shape.ts';
import { parseYaml } from '../../../files/yaml.ts';
import { type Trouble, troubleOf } from '../trouble.ts';
import { type JobDraft, jobOf } from './draft.ts';

export const siteOf = ({ system, right }: Layout): Site => ({ system, references: right });

/** What the file itself would be refused for: read by the parser that reads the course's own jobs. */
export function fileTroubles(draft: JobDraft): Trouble[] {
  const file = `${draft.id || 'job'}.yaml`;
  const yaml = writeJob(jobOf(draft));
  const shape = shapeTroubles(jobSchema, parseYaml(yaml, file), file);
  if (shape.length > 0) return shape.map(troubleOf);
  return caught(() => parseJob(yaml, file));
}

/**
 * What keeps the job from being done on its system: the same check as the command's.
 * @param old the layout that a conversion starts from
 */
export function wiringTroubles(draft: JobDraft, now: Layout, old: Layout | undefined): Trouble[] {
  const { kind, wires, from } = draft;
  const none = 'Expected at least one wire; found none.';
  if ((kind === 'complete' || kind === 'put-right') && wires.length === 0)
    return [{ place: 'gives.wires', says: `${none} A job without any is “Wire from bare”.` }];
  if (kind === 'convert') {
    if (!old) return [];
    if (from.reference === '' && from.wires.length === 0) return [{ place: 'from.wires', says: none }];
  }
  const troubles: Trouble[] = [];
  const job = jobOf(draft);
  const file = `${draft.id}.yaml`;
  const stopped = caught(() =>
    checkJob(job, siteOf(now), old && siteOf(old), file, (path, expected, found) =>
      troubles.push(troubleOf(new FileError({ file, place: placeAt(path), expected, found }))),
    ),
  );
  return [...troubles, ...stopped];
}

function caught(check: () => unknown): Trouble[] {
  try {
    check();
    return [];
  } catch (error) {
    if (error instanceof FileError) return [troubleOf(error)];
    throw error;
  }
}

const names: Readonly<Record<string, string>> = {
  id: 'Name of the file',
  system: 'System',
  title: 'Title',
  brief: 'Brief',
  summary: 'One line for lists',
  'gives.wires': 'Wires at the start',
  from: 'What was here before',
  'from.system': 'Old system',
  'from.reference': 'Old wiring',
  'from.wires': 'Old wiring',
  'from.says': 'What was replaced',
};

/** What a form calls the place of a trouble. */
export function nameOfPlace(place: string): string {
  const known = Object.keys(names)
    .filter((name) => place === name || place.startsWith(`${name}.`) || place.startsWith(`${name}[`))
    .sort((a, b) => b.length - a.length)[0];
  return (known && names[known]) ?? place;
}
