import type { Coursework } from '../../course/coursework/coursework.ts';
import { parseCoursework } from '../coursework.ts';
import { FileError, show } from '../error.ts';
import { filesIn } from './folder.ts';

export const COURSEWORK = 'content/coursework';
const ENDING = '.yaml';

/**
 * Every coursework of the site's own, in the order of the files' names.
 * @throws FileError naming the file and the place when one is not sound or is not named after its id
 */
export const loadCourseworks = (root?: string): Coursework[] =>
  filesIn(COURSEWORK, ENDING, root).map(({ name, text }) => {
    const file = `${COURSEWORK}/${name}`;
    const coursework = parseCoursework(text, file);
    const expected = name.slice(0, -ENDING.length);
    if (coursework.id !== expected)
      throw new FileError({
        file,
        place: 'id',
        expected: `${expected}, as the file is called`,
        found: show(coursework.id),
      });
    return coursework;
  });
