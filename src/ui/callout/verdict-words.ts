import { isGrave } from '../../course/callouts/trial.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { Verdict } from '../../engine/diagnose/judge.ts';
import { partNamed, type System } from '../../engine/model/system.ts';
import { list } from '../../engine/rules/words.ts';
import { sayFault } from './cleared.ts';

/** One line of the verdict: what was looked at, whether it was good, and why. */
export interface Mark {
  readonly about: 'Diagnosis' | 'Proof' | 'Safety' | 'Parts';
  readonly good: boolean;
  readonly says: string;
}

type Judged = Pick<Verdict, 'right' | 'proved' | 'left' | 'alike' | 'breaches' | 'needless'>;

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** The verdict as a heading. */
export function headline({ right, proved, breaches }: Judged): string {
  if (!right) return 'That is not what is wrong';
  if (!proved) return 'Right, but a lucky guess';
  return breaches.some(({ breach }) => isGrave(breach))
    ? 'Found and proved, but not safely'
    : 'Found, and proved';
}

/** “2 other faults: that …, and that …”, a few of them by name. */
function sayOthers(others: readonly Candidate[]): string {
  const named = others.slice(0, 3).map(sayFault);
  const more = others.length > 3 ? `; ${others.length - 3} more` : '';
  return `${plural(others.length, 'other fault')}: ${named.join('; ')}${more}`;
}

/** The four marks of a visit, in words: right, proved, safe, nothing changed for nothing. */
export function marksOf(system: System, verdict: Judged, said: Candidate): Mark[] {
  const { right, proved, left, alike, breaches, needless } = verdict;
  const fits = left.some(({ id }) => id === said.id);
  const diagnosis = right
    ? alike.length > 0
      ? `Right. No test tells it from ${plural(alike.length, 'other fault')}, so those count as well.`
      : 'Right.'
    : fits
      ? 'It fits what you saw, but so did other faults, and one of those is the true one.'
      : 'What you saw had already ruled it out. Look below for the test that did.';
  const proof = proved
    ? 'What you saw leaves nothing else.'
    : left.length > 0
      ? `What you saw still fits ${sayOthers(left)}.`
      : 'What you saw leaves one fault only, and you named another.';
  const parts = list(needless.map((id) => `the ${partNamed(system, id).name.toLowerCase()}`));
  return [
    { about: 'Diagnosis', good: right, says: diagnosis },
    { about: 'Proof', good: proved, says: proof },
    {
      about: 'Safety',
      good: breaches.length === 0,
      says:
        breaches.length === 0
          ? 'Every step was safe.'
          : `${plural(breaches.length, 'unsafe step')}. On a real job one is enough.`,
    },
    {
      about: 'Parts',
      good: needless.length === 0,
      says: needless.length === 0 ? 'Nothing was changed for nothing.' : `You changed ${parts} without need.`,
    },
  ];
}
