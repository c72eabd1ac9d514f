import type { Sitting, Work } from '../course/coursework/work.ts';

/** What tells one piece of work from another. */
const workKey = ({ slot, attempt, at }: Work): string => JSON.stringify([slot, attempt, at]);

/**
 * Two states of one sitting as one: the later says who the learner is and what the coursework, and no work of either is
 * lost. Work in the order in which it was done.
 */
export function unitedSitting(here: Sitting, there: Sitting): Sitting {
  const [earlier, later] = there.at >= here.at ? [here, there] : [there, here];
  const known = new Map([...earlier.work, ...later.work].map((work) => [workKey(work), work]));
  return {
    ...later,
    begun: Math.min(earlier.begun, later.begun),
    work: [...known.values()].sort((a, b) => a.at - b.at),
  };
}

/** Whether a sitting has nothing that another lacks. */
export const isWithin = (sitting: Sitting, other: Sitting): boolean => {
  const known = new Set(other.work.map(workKey));
  return sitting.at <= other.at && sitting.work.every((work) => known.has(workKey(work)));
};
