import { type CalloutAddress, calloutPath } from '../../course/callouts/address.ts';
import { freshCallout, systemsWith } from '../../course/callouts/fresh.ts';
import { familyOfObjective, objectiveOf } from '../../course/callouts/objectives.ts';
import { masteryOf } from '../../course/progress/mastery.ts';
import { makeRandom } from '../../course/random.ts';
import type { Trial } from '../../course/trial.ts';
import { fetchCallouts } from '../course/shelf.ts';
import { freshSeed } from '../items/bank.ts';

/**
 * The page of a fresh visit to a fault of a family, from the site's root: an authored one that this learner has not
 * seen, or else one made anew. Undefined for what is no family. Rejects when something cannot be fetched.
 * @param trials the whole log
 */
export async function visitPath(name: string, trials: readonly Trial[]): Promise<string | undefined> {
  const family = familyOfObjective(`callout-${name}`);
  if (!family) return undefined;
  const { level } = masteryOf(trials.filter(({ objective }) => objective === objectiveOf(family)));
  const random = makeRandom(freshSeed());
  const cards = await fetchCallouts();
  const authored = freshCallout(cards, family, level, trials, random);
  if (authored) return calloutPath(authored);
  // The engine is fetched only now: most visits need none yet.
  const { madeVisit } = await import('./made-visit.ts');
  const made: CalloutAddress | undefined = await madeVisit(systemsWith(cards, family), family, level, random);
  return made && calloutPath(made);
}
