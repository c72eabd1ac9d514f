import { loadOutline } from '../../files/site/course.ts';

/** The course's outline, for pages that show a learner's progress. */
export const GET = (): Response => Response.json(loadOutline());
