import { jobPages } from '../../files/site/jobs.ts';

/** Every job of the course as its file says it: what a tutor may start from. */
export const GET = (): Response => Response.json(jobPages().map(({ job }) => job));
