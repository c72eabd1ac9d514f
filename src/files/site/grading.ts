import type { GradeSource } from '../../course/coursework/source.ts';
import { lessonsOf } from '../../course/outline.ts';
import type { Objective } from '../../course/task.ts';
import { makeSource } from '../coursework-source.ts';
import { jobStart } from '../job-start.ts';
import { loadCallouts, loadDoubleFaults } from './callouts.ts';
import { loadOutline, loadShelf } from './course.ts';
import { jobPages } from './jobs.ts';

/** What grading needs of the site's own content. */
export interface Grading {
  readonly source: GradeSource;
  /** Throws a RangeError for a lesson that is not there. */
  readonly objectivesOf: (lesson: string) => readonly Objective[];
}

/** Of things by id, the one wanted. Throws a RangeError for an id that is not there. */
const among =
  <T>(all: ReadonlyMap<string, T>, what: string) =>
  (id: string): T => {
    const found = all.get(id);
    if (found === undefined) throw new RangeError(`expected ${what}, found "${id}"`);
    return found;
  };

/** Reads the content of a folder for grading; layouts, judges and lists of faults are made when first asked for. */
export function loadGrading(root?: string): Grading {
  const jobs = new Map(
    jobPages(root).map(({ job, given, was }) => [job.id, jobStart(job, given, was)] as const),
  );
  const callouts = new Map(loadCallouts(root).map((file) => [file.id, file] as const));
  const lessons = new Map(
    lessonsOf(loadOutline(root)).map(({ slug, objectives }) => [slug, objectives] as const),
  );
  const { layout, quiz } = loadShelf(root);
  return {
    source: makeSource({
      layout,
      quiz,
      job: among(jobs, 'a job of the course'),
      callout: among(callouts, 'a callout of the course'),
      doubles: loadDoubleFaults(root),
    }),
    objectivesOf: among(lessons, 'a lesson of the course'),
  };
}
