import { openLibrary } from '../../src/cli/library.ts';
import { readText } from '../../src/cli/load.ts';
import type { Coursework } from '../../src/course/coursework/coursework.ts';
import { makers } from '../../src/course/items/index.ts';
import { checkCoursework, parseCoursework } from '../../src/files/coursework.ts';
import { CALLOUTS } from '../../src/files/site/callouts.ts';
import { loadOutline, loadShelf } from '../../src/files/site/course.ts';
import { filesIn } from '../../src/files/site/folder.ts';
import { loadQuizzes } from '../../src/files/site/quizzes.ts';

/**
 * A tutor's coursework, every name in it known to this course.
 * @param file as the tutor gave it
 * @throws FileError for the first thing that does not fit
 */
export function loadCoursework(file: string, root: string): Coursework {
  const coursework = parseCoursework(readText(file, file), file);
  const { jobIds, systemIds } = openLibrary();
  const known = {
    lessons: loadOutline(root).parts.flatMap(({ lessons }) => lessons.map(({ slug }) => slug)),
    jobs: jobIds,
    callouts: filesIn(CALLOUTS, '.yaml', root).map(({ name }) => name.replace(/\.yaml$/, '')),
    systems: systemIds,
    layoutIds: loadShelf(root).layoutIds,
    quizzes: loadQuizzes(root).map(({ id }) => id),
    makers,
  };
  const [trouble] = checkCoursework(coursework, known, file);
  if (trouble) throw trouble;
  return coursework;
}
