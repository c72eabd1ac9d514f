import type { JobKind } from '../../files/job.ts';

/** What a job asks for, in the words of lists; in the order in which they get harder. */
export const kindWords: Readonly<Record<JobKind, string>> = {
  complete: 'Complete the links',
  bare: 'Wire from bare',
  'put-right': 'Find and put right',
  convert: 'Convert',
};

export const kinds = Object.keys(kindWords) as JobKind[];
