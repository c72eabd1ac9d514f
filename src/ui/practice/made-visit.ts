import type { CalloutAddress } from '../../course/callouts/address.ts';
import { seedOfFamily } from '../../course/callouts/made.ts';
import type { Random } from '../../course/random.ts';
import type { Level } from '../../course/task.ts';
import { makeBench } from '../../engine/diagnose/bench.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { Family } from '../../engine/diagnose/symptom.ts';
import { candidatesFor } from '../../files/callout-pack.ts';
import { fetchDoubles, fetchLayoutOf } from '../course/shelf.ts';

/** Systems with more places than this take seconds to search, so the others come first. */
const QUICK = 100;

/** A callout of a family made anew on one of these systems; undefined when none gives one. Rejects when one cannot be fetched. */
export async function madeVisit(
  systems: readonly string[],
  family: Family,
  level: Level,
  random: Random,
): Promise<CalloutAddress | undefined> {
  const [doubles, layouts] = await Promise.all([fetchDoubles(), Promise.all(systems.map(fetchLayoutOf))]);
  const isSlow = ({ system }: (typeof layouts)[number]) => Number(system.places > QUICK);
  for (const layout of random.shuffle(layouts).sort((a, b) => isSlow(a) - isSlow(b))) {
    const known = new Map<string, readonly Candidate[]>();
    const candidatesOf = ({ id }: { readonly id: string }) => {
      const own = known.get(id) ?? candidatesFor(layout, id, doubles);
      known.set(id, own);
      return own;
    };
    const seed = seedOfFamily(layout, makeBench(layout.system), candidatesOf, family, level, random);
    if (seed !== undefined) return { kind: 'made', system: layout.id, seed, level };
  }
  return undefined;
}
