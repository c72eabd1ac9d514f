import type { Coursework } from '../course/coursework/coursework.ts';
import { MOST_COURSEWORK, readCoursework } from './coursework-schema.ts';
import { FileError } from './error.ts';
import { placeAt } from './place.ts';
import { parseYaml } from './yaml.ts';

export { checkCoursework, type Known } from './coursework-check.ts';
export {
  courseworkSchema,
  MOST_COURSEWORK,
  MOST_QUESTIONS,
  MOST_SAYS,
  MOST_SLOTS,
  MOST_TASKS,
  MOST_TITLE,
  readCoursework,
} from './coursework-schema.ts';
export { writeCoursework } from './coursework-write.ts';

/**
 * A coursework out of YAML or JSON text.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseCoursework(source: string, file: string): Coursework {
  if (source.length > MOST_COURSEWORK)
    throw new FileError({
      file,
      place: placeAt([]),
      expected: `at most ${MOST_COURSEWORK} letters`,
      found: 'more',
    });
  return readCoursework(parseYaml(source, file), file);
}
