import type { Judging } from '../../engine/grade/judge-for.ts';
import type { System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { type JobVariant, lockedMissing, shareKept } from './job-variant.ts';
import { type Marked, refused } from './source.ts';

/** Whoever puts a wiring right, or converts it, leaves at least this share of it. Common practice. */
const LEAST_KEPT = 0.5;

/** What is odd about a wire: an end that is no terminal of the system, or both ends in one. */
function oddity({ nodeOf, terminals }: System, [a, b]: Wire): string | undefined {
  const unknown = [a, b].find((end) => !((nodeOf.get(end) ?? terminals) < terminals));
  if (unknown !== undefined) return `There is no terminal ${unknown.slice(0, 60)} in this job.`;
  return a === b ? `A wire begins and ends in ${a}.` : undefined;
}

/**
 * Grades a wiring handed in for a variant of a job: its locked wires must be there, and the judge must accept it. Where
 * nothing is locked, a wiring that keeps little of what was there is left to the tutor's eye.
 * @param judging the judge of the system
 */
export function gradeWiring(
  system: System,
  { rulesBroken }: Pick<Judging, 'rulesBroken'>,
  variant: JobVariant,
  wires: readonly Wire[],
): Marked {
  for (const wire of wires) {
    const odd = oddity(system, wire);
    if (odd) return refused('unknown', odd);
  }
  const missing = lockedMissing(variant, wires);
  if (missing[0])
    return refused(
      'for another',
      `${missing.length} of the ${variant.given.length} wires that were given and stay are not there: the first is ${missing[0].join(' to ')}.`,
    );
  const share = variant.locked ? 1 : shareKept(variant, wires);
  const isOwn = share >= LEAST_KEPT;
  const broken = rulesBroken(wires).filter(({ severity }) => severity !== 'advice');
  const kept = Math.round(share * variant.given.length);
  return {
    right: broken.length === 0,
    made: isOwn ? 'as dealt' : 'unknown',
    rules: broken.map(({ id }) => id),
    notes: [
      ...broken.map(({ fails }) => `${fails}.`),
      ...(isOwn
        ? []
        : [`Only ${kept} of the ${variant.given.length} wires that were there are still in place.`]),
    ],
  };
}
