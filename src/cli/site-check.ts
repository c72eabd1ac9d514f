import { makers } from '../course/items/index.ts';
import { lessonsOf, type Outline } from '../course/outline.ts';
import type { Shelf } from '../course/task.ts';
import type { DoubleFault } from '../files/double-faults.ts';
import { CALLOUTS, DOUBLE_FAULTS, loadDoubleFaults } from '../files/site/callouts.ts';
import { loadOutline, loadShelf } from '../files/site/course.ts';
import { filesIn, type TextFile } from '../files/site/folder.ts';
import type { Courseworks } from './coursework-check.ts';
import type { Library } from './library.ts';

/** The site's own content, as the checks of a tutor's files need it. */
export interface Site {
  readonly root: string;
  readonly library: Library;
  readonly outline: Outline;
  readonly shelf: Shelf & { readonly layoutIds: readonly string[] };
  readonly callouts: readonly TextFile[];
  readonly doubles: readonly DoubleFault[];
  readonly doublesFile: string;
}

/** Text files of a folder, named by their path from the root. */
export const pathsIn = (folder: string, root: string): TextFile[] =>
  filesIn(folder, '.yaml', root).map(({ name, text }) => ({ name: `${folder}/${name}`, text }));

export const openSite = (root: string, library: Library): Site => ({
  root,
  library,
  outline: loadOutline(root),
  shelf: loadShelf(root),
  callouts: pathsIn(CALLOUTS, root),
  doubles: loadDoubleFaults(root),
  doublesFile: DOUBLE_FAULTS,
});

const idOf = ({ name }: TextFile): string => name.slice(name.lastIndexOf('/') + 1).replace(/\.yaml$/, '');

/** What the check of some courseworks needs to know of the site. */
export function forCourseworks(
  { root, library, outline, shelf, callouts }: Site,
  files: readonly TextFile[],
): Courseworks {
  const lessons = new Map(lessonsOf(outline).map((lesson) => [lesson.slug, lesson]));
  return {
    files,
    shelf,
    objectivesOf: (slug) => {
      const lesson = lessons.get(slug);
      if (!lesson) throw new RangeError(`expected a lesson of the course, found "${slug}"`);
      return lesson.objectives;
    },
    known: {
      lessons: [...lessons.keys()],
      jobs: library.jobIds,
      callouts: callouts.map(idOf),
      systems: library.systemIds,
      layoutIds: shelf.layoutIds,
      quizzes: filesIn('content/quizzes', '.yaml', root).map(idOf),
      makers,
    },
  };
}
