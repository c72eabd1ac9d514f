/**
 * Sets of states, whatever they are kept as: lanes of words for a small system, decision diagrams for one with too
 * many states to hold one by one. A rule is written once over these.
 */
export interface Sets<T> {
  readonly none: T;
  /** Every state of the system. */
  readonly all: T;
  readonly and: (a: T, b: T) => T;
  readonly or: (a: T, b: T) => T;
  readonly not: (a: T) => T;
  /** States of the first that are not in the second. */
  readonly minus: (a: T, b: T) => T;
  readonly isNone: (a: T) => boolean;
}

/** States in at least one of the sets. */
export const anyOf = <T>({ none, or }: Sets<T>, sets: readonly T[]): T => sets.reduce(or, none);

/** States in every one of the sets. */
export const allOf = <T>({ all, and }: Sets<T>, sets: readonly T[]): T => sets.reduce(and, all);
