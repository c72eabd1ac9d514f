/** Chance that can be played again: the same seed gives the same series. */
export interface Random {
  /** A fraction from 0 up to but not including 1. */
  readonly next: () => number;
  /** A whole number from 0 up to but not including `below`. */
  readonly int: (below: number) => number;
  /** @throws RangeError when the list is empty */
  readonly pick: <T>(from: readonly T[]) => T;
  /** A new list in another order. */
  readonly shuffle: <T>(list: readonly T[]) => T[];
}

/**
 * Makes a series from a whole number of 32 bits, by the public-domain generator known as mulberry32: quick, small and
 * even enough to deal questions; not for secrets.
 */
export function makeRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const int = (below: number) => Math.floor(next() * below);
  return {
    next,
    int,
    pick: (from) => {
      if (from.length === 0) throw new RangeError('expected a list to pick from, found an empty one');
      return from[int(from.length)] as (typeof from)[number];
    },
    shuffle: (list) => {
      const left = [...list];
      for (let last = left.length - 1; last > 0; last--) {
        const other = int(last + 1);
        const kept = left[last] as (typeof left)[number];
        left[last] = left[other] as (typeof left)[number];
        left[other] = kept;
      }
      return left;
    },
  };
}

/** A seed of 32 bits out of a text, so that a lesson's first variant is always the same one (FNV-1a). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let k = 0; k < text.length; k++) hash = Math.imul(hash ^ text.charCodeAt(k), 0x01000193);
  return hash >>> 0;
}
