import { FileError, show } from '../files/error.ts';
import { parseJob } from '../files/job.ts';
import { checkJob } from '../files/job-fit.ts';
import { placeAt } from '../files/place.ts';
import { parseQuiz } from '../files/quiz.ts';
import type { TextFile } from '../files/site/folder.ts';
import { parseYaml } from '../files/yaml.ts';
import { checkCallouts } from './callout-check.ts';
import { checkCourseworks } from './coursework-check.ts';
import { forCourseworks, type Site } from './site-check.ts';
import { checkStages } from './stage-check.ts';

type Check = (file: TextFile, site: Site) => readonly FileError[];

const checkOwnJob: Check = ({ name: file, text }, { library }) => {
  const troubles: FileError[] = [];
  const job = parseJob(text, file);
  const now = library.system(job.system, { file, place: 'system' });
  const old = job.from && library.system(job.from.system, { file, place: 'from.system' });
  checkJob(job, now, old, file, (path, expected, found) =>
    troubles.push(new FileError({ file, place: placeAt(path), expected, found })),
  );
  return troubles;
};

/** Formats that a tutor writes, each told by a key that no other has. */
const kinds: readonly { readonly key: string; readonly kind: string; readonly check: Check }[] = [
  { key: 'brief', kind: 'job', check: checkOwnJob },
  {
    key: 'steps',
    kind: 'stage script',
    check: (file, { shelf: { layout, layoutIds } }) => checkStages({ files: [file], layout, layoutIds }),
  },
  {
    key: 'tasks',
    kind: 'coursework',
    check: (file, site) => checkCourseworks(forCourseworks(site, [file])),
  },
  {
    key: 'customer',
    kind: 'callout',
    check: (file, { shelf: { layout, layoutIds }, doubles, doublesFile }) =>
      checkCallouts({ files: [file], layout, layoutIds, doubles, doublesFile }).filter(
        (trouble) => trouble.file === file.name,
      ),
  },
  {
    key: 'source',
    kind: 'quiz',
    check: ({ name, text }) => {
      parseQuiz(text, name);
      return [];
    },
  },
];

/** A tutor's file: what it is, as far as its keys tell, and everything that does not fit. */
export interface OwnReport {
  readonly kind?: string;
  readonly troubles: readonly FileError[];
}

/** Checks a tutor's own file against the site's content. The kind of file is told by its keys. */
export function checkOwn(file: TextFile, site: Site): OwnReport {
  try {
    const data = parseYaml(file.text, file.name);
    const keys = typeof data === 'object' && data !== null && !Array.isArray(data) ? Object.keys(data) : [];
    const found = kinds.find(({ key }) => keys.includes(key));
    if (found) {
      const { kind, check } = found;
      try {
        return { kind, troubles: check(file, site) };
      } catch (error) {
        if (error instanceof FileError) return { kind, troubles: [error] };
        throw error;
      }
    }
    const known = kinds.map(({ key, kind }) => `${key} (a ${kind})`).join(', ');
    throw new FileError({
      file: file.name,
      place: placeAt([]),
      expected: `one of the keys ${known}`,
      found: keys.length > 0 ? keys.slice(0, 8).join(', ').slice(0, 120) : show(data),
    });
  } catch (error) {
    if (error instanceof FileError) return { troubles: [error] };
    throw error;
  }
}
