/** What a tutor may want to look at. */
export type FlagKind =
  | 'told'
  | 'another'
  | 'same-wiring'
  | 'same-slip'
  | 'quick'
  | 'overlap'
  | 'clock'
  | 'order'
  | 'edited'
  | 'more-goes'
  | 'differs'
  | 'names';

/**
 * How much it tells: `strong` hardly comes about by itself, `look` is worth a question to the learner, `weak` comes about
 * in honest work too. None of them is a proof of anything.
 */
export type Weight = 'strong' | 'look' | 'weak';

export interface Flag {
  readonly kind: FlagKind;
  readonly weight: Weight;
  readonly code: string;
  /** Other learners that it is about. */
  readonly others: readonly string[];
  /** The slot, where it is about one. */
  readonly slot?: string;
  /** A sentence or two. It says what is there, never why. */
  readonly says: string;
}

/** In a few words, for lists. */
export const flagTitles: Readonly<Record<FlagKind, string>> = {
  told: 'Told right, is not',
  another: 'Made for another variant',
  'same-wiring': 'Same wires, other numbering',
  'same-slip': 'Same wrong circuit',
  quick: 'Quicker than hands are',
  overlap: 'Two things at once',
  clock: 'Times that do not fit',
  order: 'Goes out of order',
  edited: 'Two versions of one go',
  'more-goes': 'More goes than allowed',
  differs: 'Other version of the coursework',
  names: 'Two names, one code',
};

const ORDER: readonly Weight[] = ['strong', 'look', 'weak'];
export const gravest = (a: Pick<Flag, 'weight'>, b: Pick<Flag, 'weight'>): number =>
  ORDER.indexOf(a.weight) - ORDER.indexOf(b.weight);
