/** `npm run check`: fails when a file of the course's content does not hold what it claims. */
import { fileURLToPath } from 'node:url';
import { loadOutline, loadShelf } from '../files/site/course.ts';
import { loadFacts, loadLessons } from '../files/site/lessons.ts';
import { checkContent } from './content-check.ts';
import { checkCourse } from './course-check.ts';
import { openLibrary } from './library.ts';
import { complain, print } from './output.ts';

const { systems, references, mistakes, jobs, troubles: circuits } = checkContent(openLibrary());
const root = fileURLToPath(new URL('../../', import.meta.url));
const lessons = loadLessons(root);
const course = { outline: loadOutline(root), lessons, facts: loadFacts(root), shelf: loadShelf(root) };
const troubles = [...circuits, ...checkCourse(course)];
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
];
await print(
  `content: ${looked.join(', ')}; ${troubles.length === 0 ? 'all sound' : of(troubles.length, 'trouble')}\n`,
);
process.exitCode = troubles.length === 0 ? 0 : 1;
