import * as z from 'zod';
import { checked } from './checked.ts';
import { filesIn } from './folder.ts';

// The job's own schema checks the rest of the file; a list of jobs needs only these.
const card = z.object({
  id: z.string().min(1),
  title: z.string().min(1),
  brief: z.string().min(1),
  summary: z.string().min(1),
});

/** What a list of jobs says about one. */
export type JobCard = z.infer<typeof card>;

/**
 * Every job in content/jobs, in the order of the files' names.
 * @throws Error naming the file in which one of the three is missing
 */
export function loadJobCards(root?: string): JobCard[] {
  return filesIn('content/jobs', '.yaml', root).map(({ name, text }) => checked(card, text, name));
}
