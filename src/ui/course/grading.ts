import type { Coursework } from '../../course/coursework/coursework.ts';
import { slotsOf } from '../../course/coursework/slots.ts';
import type { GradeSource } from '../../course/coursework/source.ts';
import { lessonsOf } from '../../course/outline.ts';
import type { Task } from '../../course/task.ts';
import { makeSource } from '../../files/coursework-source.ts';
import { fetchCallout, fetchDoubles, fetchJob, fetchOutline, fetchShelf } from './shelf.ts';

/** What could be had of some ids; one that is not there is left out, and grading says so of the work that needs it. */
async function had<T>(ids: readonly string[], get: (id: string) => Promise<T>): Promise<Map<string, T>> {
  const found = await Promise.all(
    [...new Set(ids)].map(async (id): Promise<[string, T][]> => {
      try {
        return [[id, await get(id)]];
      } catch {
        return [];
      }
    }),
  );
  return new Map(found.flat());
}

const among =
  <T>(all: ReadonlyMap<string, T>, what: string) =>
  (id: string): T => {
    const found = all.get(id);
    if (found === undefined) throw new RangeError(`expected ${what}, found "${id}"`);
    return found;
  };

/**
 * A source for grading with all that some courseworks name, fetched from this site. Rejects when the outline or the
 * double faults cannot be fetched.
 */
export async function fetchGradeSource(courseworks: readonly Coursework[]): Promise<GradeSource> {
  const [outline, doubles] = await Promise.all([fetchOutline(), fetchDoubles()]);
  const lessons = new Map(lessonsOf(outline).map(({ slug, objectives }) => [slug, objectives]));
  const slots = courseworks.flatMap((coursework) =>
    slotsOf(coursework, (lesson) => lessons.get(lesson) ?? []),
  );
  const [jobs, callouts] = await Promise.all([
    had(
      slots.flatMap((slot) => (slot.kind === 'job' ? [slot.job] : [])),
      fetchJob,
    ),
    had(
      slots.flatMap((slot) => (slot.kind === 'callout' ? [slot.callout] : [])),
      fetchCallout,
    ),
  ]);
  const systems = [
    ...[...jobs.values(), ...callouts.values()].map(({ system }) => system),
    ...slots.flatMap((slot) => (slot.kind === 'fault' ? [slot.system] : [])),
    ...slots.flatMap((slot) => (slot.kind === 'question' ? (slot.about.layouts ?? []) : [])),
  ];
  const quizzes = slots.flatMap((slot): Task[] =>
    slot.kind === 'question' && slot.about.quiz ? [slot.about] : [],
  );
  const [layouts, shelf] = await Promise.all([
    had(systems, async (id) => (await fetchShelf([{ make: '', layouts: [id] }])).layout(id)),
    fetchShelf(quizzes.map(({ make, quiz }) => ({ make, ...(quiz !== undefined && { quiz }) }))),
  ]);
  return makeSource({
    layout: among(layouts, 'a layout of this site'),
    quiz: shelf.quiz,
    job: among(jobs, 'a job of this site'),
    callout: among(callouts, 'a callout of this site'),
    doubles,
  });
}
