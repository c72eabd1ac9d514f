/**
 * `npm run check`: fails when a file of the course's content does not hold what it claims.
 * `npm run check -- job.yaml …`: the same for files of a tutor's own.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FileError } from '../files/error.ts';
import { COURSEWORK } from '../files/site/coursework.ts';
import { loadFacts, loadLessons } from '../files/site/lessons.ts';
import { STAGES } from '../files/site/stage.ts';
import { withLine } from '../files/yaml-line.ts';
import { checkCallouts } from './callout-check.ts';
import { checkContent } from './content-check.ts';
import { checkCourse } from './course-check.ts';
import { checkCourseworks, checkNames } from './coursework-check.ts';
import { openLibrary } from './library.ts';
import { callersPath, readText } from './load.ts';
import { complain, print } from './output.ts';
import { checkOwn } from './own-check.ts';
import { forCourseworks, openSite, pathsIn } from './site-check.ts';
import { checkStages } from './stage-check.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const of = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;
const verdict = (troubles: number) => (troubles === 0 ? 'all sound' : of(troubles, 'trouble'));

/** A trouble of the site's own content, with its line. */
function located(trouble: FileError): FileError {
  const path = join(root, trouble.file);
  return trouble.file.startsWith('content/') && existsSync(path)
    ? withLine(trouble, readFileSync(path, 'utf8'))
    : trouble;
}

/** Checks everything of the site's own; gives the number of troubles. */
async function checkSite(): Promise<number> {
  const library = openLibrary();
  const { systems, references, mistakes, jobs, troubles: circuits } = checkContent(library);
  const lessons = loadLessons(root);
  const site = openSite(root, library);
  const { shelf, outline, callouts, doubles, doublesFile } = site;
  const { layout, layoutIds } = shelf;
  const courseworks = pathsIn(COURSEWORK, root);
  const stages = pathsIn(STAGES, root);
  const troubles = [
    ...circuits,
    ...checkCourse({ outline, lessons, facts: loadFacts(root), shelf }),
    ...checkCallouts({ files: callouts, doubles, doublesFile, layout, layoutIds }),
    ...checkNames(courseworks),
    ...checkCourseworks(forCourseworks(site, courseworks)),
    ...checkStages({ files: stages, layout, layoutIds }),
  ];
  for (const trouble of troubles) complain(located(trouble).message);
  const claims = lessons.reduce((sum, lesson) => sum + lesson.claims.length, 0);
  const looked = [
    of(systems, 'system'),
    of(references, 'reference'),
    of(mistakes, 'mistake'),
    of(jobs, 'job'),
    of(lessons.length, 'lesson'),
    of(claims, 'claim'),
    of(callouts.length, 'callout'),
    of(doubles.length, 'double fault'),
    of(courseworks.length, 'coursework'),
    of(stages.length, 'stage script'),
  ];
  await print(`content: ${looked.join(', ')}; ${verdict(troubles.length)}\n`);
  return troubles.length;
}

/** Checks files of a tutor's own; gives the number of troubles. */
async function checkFiles(names: readonly string[]): Promise<number> {
  const site = openSite(root, openLibrary());
  let count = 0;
  for (const name of names) {
    try {
      const text = readText(callersPath(name, 'check'), name);
      const { kind, troubles } = checkOwn({ name, text }, site);
      for (const trouble of troubles)
        complain((trouble.file === name ? withLine(trouble, text) : located(trouble)).message);
      if (kind !== undefined) await print(`${name}: a ${kind}; ${verdict(troubles.length)}\n`);
      count += troubles.length;
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      complain(error.message);
      count++;
    }
  }
  return count;
}

try {
  const names = process.argv.slice(2);
  process.exitCode = (await (names.length > 0 ? checkFiles(names) : checkSite())) === 0 ? 0 : 1;
} catch (error) {
  // A file that the rest is built on does not parse.
  if (!(error instanceof FileError)) throw error;
  complain(located(error).message);
  process.exitCode = 1;
}
