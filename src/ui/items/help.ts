import type { Mastery } from '../../course/progress/mastery.ts';

/** What is shown before an answer: an example of another variant, and how many steps of this one. */
export interface Shown {
  readonly example: boolean;
  readonly steps: number;
}

/**
 * Help as it follows from mastery. It fades from the end: whoever has not met the question sees all but the last two
 * steps, whoever got one right half of them, then nothing. After a failure an example comes first.
 * @param steps how many the solution has
 * @param off the learner has switched help off
 */
export function shownFor(mastery: Pick<Mastery, 'state' | 'help'>, steps: number, off: boolean): Shown {
  if (off || mastery.help === 'own') return { example: false, steps: 0 };
  const hidden = mastery.help === 'worked' ? 2 : Math.max(2, Math.ceil(steps / 2));
  // A solution of two steps would otherwise show nothing at all.
  const shown = Math.max(mastery.help === 'worked' && steps > 1 ? 1 : 0, steps - hidden);
  return { example: mastery.help === 'worked' && mastery.state !== 'unseen', steps: shown };
}
