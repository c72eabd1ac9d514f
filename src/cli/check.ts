/** `npm run check`: fails when a file of the course's content does not hold what it claims. */
import { fileURLToPath } from 'node:url';
import { CALLOUTS, DOUBLE_FAULTS, loadDoubleFaults } from '../files/site/callouts.ts';
import { loadOutline, loadShelf } from '../files/site/course.ts';
import { filesIn } from '../files/site/folder.ts';
import { loadFacts, loadLessons } from '../files/site/lessons.ts';
import { checkCallouts } from './callout-check.ts';
import { checkContent } from './content-check.ts';
import { checkCourse } from './course-check.ts';
import { openLibrary } from './library.ts';
import { complain, print } from './output.ts';

const { systems, references, mistakes, jobs, troubles: circuits } = checkContent(openLibrary());
const root = fileURLToPath(new URL('../../', import.meta.url));
const lessons = loadLessons(root);
const shelf = loadShelf(root);
const course = { outline: loadOutline(root), lessons, facts: loadFacts(root), shelf };
const callouts = filesIn(CALLOUTS, '.yaml', root).map(({ name, text }) => ({
  name: `${CALLOUTS}/${name}`,
  text,
}));
const doubles = loadDoubleFaults(root);
const { layout, layoutIds } = shelf;
const visits = { files: callouts, doubles, doublesFile: DOUBLE_FAULTS, layout, layoutIds };
const troubles = [...circuits, ...checkCourse(course), ...checkCallouts(visits)];
for (const { message } of troubles) complain(message);
const claims = lessons.reduce((sum, lesson) => sum + lesson.claims.length, 0);
const of = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;
const looked = [
  of(systems, 'system'),
  of(references, 'reference'),
  of(mistakes, 'mistake'),
  of(jobs, 'job'),
  of(lessons.length, 'lesson'),
  of(claims, 'claim'),
  of(callouts.length, 'callout'),
  of(doubles.length, 'double fault'),
];
await print(
  `content: ${looked.join(', ')}; ${troubles.length === 0 ? 'all sound' : of(troubles.length, 'trouble')}\n`,
);
process.exitCode = troubles.length === 0 ? 0 : 1;
