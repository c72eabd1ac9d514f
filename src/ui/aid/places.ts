import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { System } from '../../engine/model/system.ts';

/** A fault, with those that nothing can tell from it. */
export interface Suspect {
  readonly says: string;
  readonly alike: readonly string[];
}

/** A place to look in, with what may be wrong there. */
export interface Place {
  readonly name: string;
  readonly suspects: readonly Suspect[];
}

/*
 * Which place first (common practice; no figures are published): what moves, switches or carries the supply before what
 * has neither contacts nor works, then joints and cables, then what somebody wired wrong, then two faults at once.
 */
const ORDER = ['moves', 'still', 'case', 'wire', 'wrong', 'two', 'none'] as const;
type Sort = (typeof ORDER)[number];

/** The name of where a candidate is, and what sort of place it is. */
function placeOf(
  { parts }: System,
  { failures, misplaced, strays }: Candidate,
): { name: string; sort: Sort } {
  const count = failures.length + strays.length + misplaced.length;
  if (count === 0) return { name: 'Nothing in this wiring', sort: 'none' };
  if (misplaced.length > 0 || strays.length > 0) return { name: 'Wired wrong', sort: 'wrong' };
  if (count > 1) return { name: 'Two faults at once', sort: 'two' };
  const [failure] = failures;
  const part = failure && 'part' in failure ? parts[failure.part] : undefined;
  if (!failure || 'wire' in failure || !part) return { name: 'Loose or broken wires', sort: 'wire' };
  const { name, kind, mover } = part;
  if (failure.spec.id === 'live case') return { name: 'A live core on a case', sort: 'case' };
  const isBusy = mover >= 0 || (kind.contacts ?? []).length > 0;
  return { name, sort: isBusy ? 'moves' : 'still' };
}

/**
 * Places to look in, in the order in which to look: by what fails most often, then by how much of what is left lies
 * there. Each group of candidates that nothing can tell apart comes once, under the first place of its members.
 */
export function placesOf(system: System, groups: readonly (readonly Candidate[])[]): Place[] {
  const places = new Map<string, { sort: Sort; suspects: Suspect[] }>();
  for (const group of groups) {
    const found = group
      .map((one) => ({ one, ...placeOf(system, one) }))
      .sort((a, b) => ORDER.indexOf(a.sort) - ORDER.indexOf(b.sort));
    const [first, ...others] = found;
    if (!first) continue;
    const place = places.get(first.name) ?? { sort: first.sort, suspects: [] };
    place.suspects.push({ says: first.one.says, alike: others.map(({ one }) => one.says) });
    places.set(first.name, place);
  }
  return [...places]
    .sort(
      ([, a], [, b]) =>
        ORDER.indexOf(a.sort) - ORDER.indexOf(b.sort) || b.suspects.length - a.suspects.length,
    )
    .map(([name, { suspects }]) => ({ name, suspects }));
}
