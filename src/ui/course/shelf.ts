import type { Coursework } from '../../course/coursework/coursework.ts';
import type { Layout } from '../../course/layout.ts';
import type { Outline } from '../../course/outline.ts';
import type { Quiz } from '../../course/quiz.ts';
import type { Shelf, Task } from '../../course/task.ts';
import type { CalloutFile } from '../../files/callout.ts';
import type { CalloutCard } from '../../files/callout-pack.ts';
import type { DoubleFault } from '../../files/double-faults.ts';
import type { JobStart } from '../../files/job-start.ts';
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

/** A layout made ready for the engine, by the id of its system. Rejects when it cannot be fetched. */
export const fetchLayoutOf = (id: string): Promise<Layout> =>
  fetchOnce(`/course/layouts/${id}.json`, (file: LayoutFile) => makeLayout(file));

const fetchQuizzes = (): Promise<ReadonlyMap<string, Quiz>> =>
  fetchOnce('/course/quizzes.json', (quizzes: Quiz[]) => new Map(quizzes.map((quiz) => [quiz.id, quiz])));

/** Every authored callout as lists show it. Rejects when it cannot be fetched. */
export const fetchCallouts = (): Promise<readonly CalloutCard[]> =>
  fetchOnce('/course/callouts.json', (cards: CalloutCard[]) => cards);

/** An authored callout. Rejects when it cannot be fetched. */
export const fetchCallout = (id: string): Promise<CalloutFile> =>
  fetchOnce(`/course/callouts/${id}.json`, (file: CalloutFile) => file);

/** What a job says and starts with. Rejects when it cannot be fetched. */
export const fetchJob = (id: string): Promise<JobStart> =>
  fetchOnce(`/course/jobs/${id}.json`, (start: JobStart) => start);

/** A coursework of the site's own. Rejects when it cannot be fetched. */
export const fetchCoursework = (id: string): Promise<Coursework> =>
  fetchOnce(`/course/coursework/${id}.json`, (coursework: Coursework) => coursework);

/** The double faults of all systems. Rejects when they cannot be fetched. */
export const fetchDoubles = (): Promise<readonly DoubleFault[]> =>
  fetchOnce('/course/double-faults.json', (doubles: DoubleFault[]) => doubles);

/** A shelf with just what some tasks name. Rejects when a file cannot be fetched. */
export async function fetchShelf(tasks: readonly Task[]): Promise<Shelf> {
  const ids = [...new Set(tasks.flatMap(({ layouts }) => layouts ?? []))];
  const [layouts, quizzes] = await Promise.all([
    Promise.all(ids.map(fetchLayoutOf)),
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
