import type { Sets } from './sets.ts';

/** The sets that all others are made of, for one system: how each input is set, where each mechanism stands. */
export interface Atoms<T> {
  readonly sets: Sets<T>;
  /** States in which input `input` has its first setting (0) or its second (1). */
  readonly isSet: (input: number, setting: 0 | 1) => T;
  /** States in which a mover stands in the position with this index. */
  readonly stands: (mover: number, position: number) => T;
}
