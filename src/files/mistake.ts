import { type Wire, wireKey } from '../engine/model/wiring.ts';

/** A wiring of a system that is accepted. */
export interface Reference {
  readonly id: string;
  readonly title: string;
  /** How it differs from the others, for a learner who compares. */
  readonly says: string;
  readonly wires: readonly Wire[];
}

/** A classic wrong wiring: a reference with wires lifted and others landed. */
export interface Mistake {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  /** The id of the reference it starts from. */
  readonly from: string;
  readonly lift: readonly Wire[];
  readonly land: readonly Wire[];
  /** Ids of exactly the rules of severity danger or fault that it breaks. */
  readonly breaks: readonly string[];
  /** Ids of the advice it earns beyond that of its reference. */
  readonly advises: readonly string[];
}

/** The wires of a mistake. Throws an Error when its reference is not among those given. */
export function applyMistake(references: readonly Reference[], { from, lift, land }: Mistake): Wire[] {
  const reference = references.find(({ id }) => id === from);
  if (!reference) throw new Error(`no reference "${from}"`);
  const lifted = new Set(lift.map(wireKey));
  return [...reference.wires.filter((wire) => !lifted.has(wireKey(wire))), ...land];
}
