import type { KeptVisit } from '../../../course/callouts/kept-visit.ts';
import { isRightAlone } from '../../../course/progress/answers.ts';
import type { Trial } from '../../../course/trial.ts';

/** How a learner stands with one callout: `begun` is a visit that was left before its end. */
export type Standing = 'unseen' | 'begun' | 'shaky' | 'solid';

export const standingWords: Readonly<Record<Standing, string>> = {
  unseen: 'Not tried',
  begun: 'Begun',
  shaky: 'Shaky',
  solid: 'Solid',
};

/**
 * How it stands with one callout: solid when the latest visit that was finished was right, proved and safe without help.
 * @param trials the whole log, in any order
 * @param visits all that is kept of visits
 * @param callout its address
 */
export function standingOf(
  trials: readonly Trial[],
  visits: readonly KeptVisit[],
  callout: string,
): Standing {
  const visit = visits.findLast((one) => one.callout === callout);
  if (visit && !visit.done && visit.acts.length > 0) return 'begun';
  const latest = trials.filter(({ item }) => item === callout).sort((a, b) => b.at - a.at)[0];
  if (!latest) return 'unseen';
  return isRightAlone(latest) ? 'solid' : 'shaky';
}
