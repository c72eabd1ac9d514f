import { playClaim, UnknownName } from '../course/claim.ts';
import { findMaker, makeItem } from '../course/items/index.ts';
import { lessonsOf, type Outline } from '../course/outline.ts';
import type { Shelf, Task } from '../course/task.ts';
import type { Fact } from '../files/course-files.ts';
import { FileError, quote, show } from '../files/error.ts';
import { placeAt } from '../files/place.ts';
import type { Lesson } from '../files/site/lessons.ts';
import { plainText } from '../files/site/plainText.ts';
import { oneOf } from '../files/suggest.ts';

/** What a course is made of, for the check. */
export interface Course {
  readonly outline: Outline;
  readonly lessons: readonly Lesson[];
  readonly facts: ReadonlyMap<string, Fact>;
  readonly shelf: Shelf;
}

type Fail = (path: readonly PropertyKey[], expected: string, found: string) => void;

/**
 * Everything that a course's lessons claim and does not hold: a claim that the engine does not bear out, a task that
 * makes no item, an objective that no question of the lesson asks for, an id that is not there or is there twice.
 */
export function checkCourse({ outline, lessons, facts, shelf }: Course): FileError[] {
  const troubles: FileError[] = [];
  const objectives = new Map<string, string>();
  for (const lesson of lessons) {
    const { file } = lesson;
    const fail: Fail = (path, expected, found) =>
      troubles.push(new FileError({ file, place: placeAt(path), expected, found }));
    lesson.objectives.forEach(({ id, tasks }, k) => {
      const at = ['objectives', k];
      const other = objectives.get(id);
      if (other) fail([...at, 'id'], 'an id that no other objective has', `that of ${other}`);
      objectives.set(id, file);
      if (!lesson.body.includes(`<Check objective="${id}"`))
        fail(at, `<Check objective="${id}" /> in the text`, 'none');
      tasks.forEach((task, t) => {
        checkTask(shelf, task, [...at, 'tasks', t], fail);
      });
    });
    lesson.facts.forEach((id, k) => {
      if (!facts.has(id)) fail(['facts', k], oneOf(id, facts.keys()), show(id));
    });
    checkClaims(lesson, shelf, fail);
  }
  const slugs = lessonsOf(outline).map(({ slug }) => slug);
  outline.routes.forEach((route, k) => {
    route.lessons.forEach((slug, l) => {
      if (slugs.includes(slug)) return;
      const place = placeAt([k, 'lessons', l]);
      troubles.push(
        new FileError({
          file: 'content/routes.yaml',
          place,
          expected: oneOf(slug, slugs),
          found: show(slug),
        }),
      );
    });
  });
  return troubles;
}

function checkTask(shelf: Shelf, task: Task, at: readonly PropertyKey[], fail: Fail): void {
  const maker = findMaker(task.make);
  if (!maker) {
    fail([...at, 'make'], 'a maker of items', show(task.make));
    return;
  }
  const needed = maker.needs === 'layout' ? 'layouts' : maker.needs;
  if (task[needed] === undefined) {
    fail(at, `${needed}, for ${task.make}`, 'none');
    return;
  }
  // Each layout by itself, so that none hides behind another that works.
  for (const one of task.layouts && maker.needs === 'layout'
    ? task.layouts.map((id) => ({ ...task, layouts: [id] }))
    : [task]) {
    try {
      makeItem(shelf, one, 1, 1);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      fail(at, 'a task that makes items', quote(error.message));
    }
  }
}

function checkClaims({ claims, body }: Lesson, shelf: Shelf, fail: Fail): void {
  const text = plainText(body).toLowerCase();
  claims.forEach((claim, k) => {
    const at = ['claims', k];
    if (!text.includes(claim.says.toLowerCase()))
      fail([...at, 'says'], 'words that stand in the text', quote(claim.says));
    try {
      const wrong = playClaim(shelf.layout(claim.layout), claim);
      if (wrong.length > 0) fail(at, quote(claim.says), wrong.join('; '));
    } catch (error) {
      if (!(error instanceof UnknownName || error instanceof RangeError)) throw error;
      fail(at, 'names of this layout', quote(error.message));
    }
  });
}
