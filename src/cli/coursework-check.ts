import type { Coursework } from '../course/coursework/coursework.ts';
import { slotsOf } from '../course/coursework/slots.ts';
import { makeItem } from '../course/items/index.ts';
import type { Objective, Shelf } from '../course/task.ts';
import { checkCoursework, type Known, MOST_SLOTS, parseCoursework } from '../files/coursework.ts';
import { FileError, quote, show } from '../files/error.ts';
import { placeAt } from '../files/place.ts';
import type { TextFile } from '../files/site/folder.ts';

/** What the check of courseworks looks at. */
export interface Courseworks {
  /** Path and text. */
  readonly files: readonly TextFile[];
  readonly known: Known;
  readonly shelf: Shelf;
  readonly objectivesOf: (lesson: string) => readonly Objective[];
}

/** Everything that courseworks name and nothing bears: see `checkCoursework`. Then every question is dealt once. */
export function checkCourseworks({ files, ...site }: Courseworks): FileError[] {
  return files.flatMap(({ name: file, text }) => {
    try {
      const coursework = parseCoursework(text, file);
      const unknown = checkCoursework(coursework, site.known, file);
      return unknown.length > 0 ? unknown : checkSlots(coursework, site, file);
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      return [error];
    }
  });
}

function checkSlots(
  coursework: Coursework,
  { shelf, objectivesOf }: Omit<Courseworks, 'files'>,
  file: string,
): FileError[] {
  const troubles: FileError[] = [];
  const fail = (path: readonly PropertyKey[], expected: string, found: string) =>
    troubles.push(new FileError({ file, place: placeAt(path), expected, found }));
  const slots = slotsOf(coursework, objectivesOf);
  if (slots.length > MOST_SLOTS)
    fail(['tasks'], `at most ${MOST_SLOTS} questions, jobs and visits together`, String(slots.length));
  coursework.tasks.forEach((task, k) => {
    const own = slots.filter((slot) => slot.task.id === task.id);
    if ((task.pass ?? 0) > own.length)
      fail(['tasks', k, 'pass'], `at most ${own.length}: the task has no more`, String(task.pass));
    const [slot] = own;
    if (slot?.kind !== 'question') return;
    try {
      makeItem(shelf, slot.about, 1, slot.level);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      fail(['tasks', k], 'a task that gives questions', quote(error.message));
    }
  });
  return troubles;
}

/** A coursework of the site is called as its file is. */
export function checkNames(files: readonly TextFile[]): FileError[] {
  return files.flatMap(({ name: file, text }) => {
    const expected = file.slice(file.lastIndexOf('/') + 1).replace(/\.yaml$/, '');
    try {
      const { id } = parseCoursework(text, file);
      if (id === expected) return [];
      return [
        new FileError({ file, place: 'id', expected: `${expected}, as the file is called`, found: show(id) }),
      ];
    } catch {
      // Its own trouble is told by the other check.
      return [];
    }
  });
}
