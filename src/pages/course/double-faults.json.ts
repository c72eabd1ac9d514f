import { loadDoubleFaults } from '../../files/site/callouts.ts';

/** The double faults that a visit counts among what may be wrong. */
export const GET = (): Response => Response.json(loadDoubleFaults());
