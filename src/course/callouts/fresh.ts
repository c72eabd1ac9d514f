import type { Family } from '../../engine/diagnose/symptom.ts';
import type { Random } from '../random.ts';
import type { Level } from '../task.ts';
import type { Trial } from '../trial.ts';
import { type CalloutAddress, writeCallout } from './address.ts';

/** What the choice of a visit needs to know of an authored callout. */
export interface Card {
  readonly id: string;
  readonly system: string;
  readonly level: Level;
  readonly family: Family;
}

const addressOf = ({ id }: Card): CalloutAddress => ({ kind: 'authored', id });

/**
 * An authored callout of a family that the learner has not visited, of the nearest level: only a fresh one shows what
 * they can do. Undefined when they know them all.
 * @param trials the whole log
 */
export function freshCallout(
  cards: readonly Card[],
  family: Family,
  level: Level,
  trials: readonly Trial[],
  random: Random,
): CalloutAddress | undefined {
  const known = new Set(trials.map(({ item }) => item));
  const far = (card: Card) => Math.abs(card.level - level);
  const [nearest] = random
    .shuffle(cards.filter((card) => card.family === family && !known.has(writeCallout(addressOf(card)))))
    .sort((a, b) => far(a) - far(b));
  return nearest && addressOf(nearest);
}

/** Systems that are known to show complaints of a family: there a made callout of that family is looked for. */
export const systemsWith = (cards: readonly Card[], family: Family): readonly string[] => [
  ...new Set(cards.filter((card) => card.family === family).map(({ system }) => system)),
];
