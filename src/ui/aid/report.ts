import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { Allowed } from '../../engine/diagnose/expert.ts';
import type { Inquiry, Misfit } from './inquiry.ts';
import { chooseNext, type NextTest } from './next.ts';
import type { Moment, Note } from './note.ts';
import { type Place, placesOf } from './places.ts';

/** What is still possible after everything entered. */
export interface Remains {
  /** Faults considered, and those that explain everything entered. */
  readonly total: number;
  readonly left: number;
  /** How many groups they are in that nothing can tell apart, once there are few enough to find out. */
  readonly groups: number;
  readonly places: readonly Place[];
  /** When nothing is left: findings that do not fit the others. */
  readonly misfits: readonly Misfit[];
  /** When nothing is left of a wiring that has worked: faults that would be left if it was wired wrong. */
  readonly ifAltered: number;
}

/** What to do next, if anything tells more. */
export interface Advice {
  readonly next: NextTest | undefined;
  /** Who could go on, where the one at work cannot. */
  readonly beyond: Allowed | undefined;
}

/** What remains: `left` explains everything. `altered` gives the inquiry that counts wiring mistakes; it is asked only when nothing is left. */
export function remainsOf(
  inquiry: Inquiry,
  { history, moments }: Note,
  left: readonly Candidate[],
  altered: () => Inquiry,
): Remains {
  const groups = inquiry.groups(left);
  const none = left.length === 0;
  return {
    total: inquiry.candidates.length,
    left: left.length,
    groups: groups.length,
    places: placesOf(inquiry.system, groups),
    misfits: none ? inquiry.misfits(moments) : [],
    ifAltered: none && history === 'worked' ? altered().left(moments).length : 0,
  };
}

const BEYOND: Readonly<Record<Allowed, readonly Allowed[]>> = {
  looks: ['dead', 'live'],
  dead: ['live'],
  live: [],
};

/** The next best test for the one at work, or who could make another. */
export function adviceOn(
  inquiry: Inquiry,
  { who, moments }: Note,
  current: Moment,
  left: readonly Candidate[],
): Advice {
  const next = chooseNext(inquiry, moments, current, left, who);
  if (next) return { next, beyond: undefined };
  const beyond = BEYOND[who].find((other) => chooseNext(inquiry, moments, current, left, other));
  return { next, beyond };
}
