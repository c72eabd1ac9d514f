import type { Layout } from '../../course/layout.ts';
import type { Outline } from '../../course/outline.ts';
import type { Quiz } from '../../course/quiz.ts';
import type { Shelf, Task } from '../../course/task.ts';
import { type LayoutFile, makeLayout } from '../../files/layout-file.ts';
import { href } from '../shell/href.ts';

const waiting = new Map<string, Promise<unknown>>();

/** Fetches a file of this site once; a lost connection does not bar the next try. */
function fetchOnce<T>(path: string, make: (data: never) => T): Promise<T> {
  const known = waiting.get(path);
  if (known) return known as Promise<T>;
  const fresh = fetch(href(path)).then(async (answer) => {
    if (!answer.ok) throw new Error(`${path} could not be fetched (${answer.status})`);
    return make((await answer.json()) as never);
  });
  fresh.catch(() => waiting.delete(path));
  waiting.set(path, fresh);
  return fresh;
}

/** The course's outline. Rejects when it cannot be fetched. */
export const fetchOutline = (): Promise<Outline> =>
  fetchOnce('/course/outline.json', (data: Outline) => data);

const fetchLayout = (id: string): Promise<Layout> =>
  fetchOnce(`/course/layouts/${id}.json`, (file: LayoutFile) => makeLayout(file));

const fetchQuizzes = (): Promise<ReadonlyMap<string, Quiz>> =>
  fetchOnce('/course/quizzes.json', (quizzes: Quiz[]) => new Map(quizzes.map((quiz) => [quiz.id, quiz])));

/** A shelf with just what some tasks name. Rejects when a file cannot be fetched. */
export async function fetchShelf(tasks: readonly Task[]): Promise<Shelf> {
  const ids = [...new Set(tasks.flatMap(({ layouts }) => layouts ?? []))];
  const [layouts, quizzes] = await Promise.all([
    Promise.all(ids.map(fetchLayout)),
    tasks.some(({ quiz }) => quiz !== undefined) ? fetchQuizzes() : new Map<string, Quiz>(),
  ]);
  const byId = new Map(layouts.map((layout) => [layout.id, layout]));
  const found = <T>(thing: T | undefined, what: string, id: string): T => {
    if (thing === undefined) throw new RangeError(`expected ${what} that a task names, found "${id}"`);
    return thing;
  };
  return {
    layout: (id) => found(byId.get(id), 'a layout', id),
    quiz: (id) => found(quizzes.get(id), 'a quiz', id),
  };
}
