import type { Layout } from '../../../course/layout.ts';
import { nearestChange } from '../../../engine/grade/change.ts';
import { judgeFor } from '../../../engine/grade/judge-for.ts';
import type { Verdict } from '../../../engine/grade/verdict.ts';
import { type Wire, wireKey } from '../../../engine/model/wiring.ts';
import { partsGone, startWiring } from '../../../files/conversion.ts';
import type { JobDraft } from './draft.ts';
import { jobOf } from './draft.ts';
import { siteOf } from './troubles.ts';

/** What the engine makes of what the learner starts with. */
export interface Findings {
  /** The wires in place at the start. */
  readonly start: readonly Wire[];
  /** What was wired before and left with its parts. */
  readonly gone: readonly string[];
  readonly verdict: Verdict;
  /** Titles of the right wirings that have all of the start's wires. */
  readonly within: readonly string[];
  /** How the start is made right with the fewest wires, and which right wiring it comes to. */
  readonly lift: readonly Wire[];
  readonly land: readonly Wire[];
  readonly nearest: string;
}

/**
 * Works the start out, judges it and finds the shortest way to a right wiring.
 * @throws FileError for names that one of the systems does not have: `wiringTroubles` tells them first
 */
export function findingsOf(draft: JobDraft, now: Layout, old: Layout | undefined): Findings | undefined {
  const { from, gives } = jobOf(draft);
  if (from && !old) return undefined;
  const begun = from && old ? startWiring(from, siteOf(old), now.system, `${draft.id}.yaml`) : undefined;
  const start = begun?.wires ?? gives?.wires ?? [];
  const keys = start.map(wireKey);
  const within = now.right.filter(({ wires }) => {
    const there = new Set(wires.map(wireKey));
    return keys.every((key) => there.has(key));
  });
  // A job to complete is completed: only what has the locked wires is a way on.
  const wanted = draft.kind === 'complete' && within.length > 0 ? within : now.right;
  const { change, nearest } = nearestChange(
    now.system,
    start,
    wanted.map(({ wires }) => wires),
  );
  return {
    start,
    gone: old && begun ? partsGone(old.system, begun.gone) : [],
    verdict: judgeFor(now.system).judge(start),
    within: within.map(({ title }) => title),
    lift: change.lift,
    land: change.land,
    nearest: wanted[nearest]?.title ?? '',
  };
}
