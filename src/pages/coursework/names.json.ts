import { loadCallouts } from '../../files/site/callouts.ts';
import { jobPages } from '../../files/site/jobs.ts';
import { systemPages } from '../../files/site/systems.ts';
import type { Names } from '../../ui/coursework/names.ts';

/** Titles of what a coursework may name. Those of lessons are in the course's outline. */
export const GET = (): Response =>
  Response.json({
    jobs: Object.fromEntries(jobPages().map(({ job }) => [job.id, job.title])),
    callouts: Object.fromEntries(loadCallouts().map(({ id, title }) => [id, title])),
    systems: Object.fromEntries(systemPages().map(({ spec }) => [spec.id, spec.title])),
  } satisfies Names);
