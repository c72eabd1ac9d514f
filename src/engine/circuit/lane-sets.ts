import type { Atoms } from './atoms.ts';
import { type Frame, lanesWhere } from './frame.ts';
import type { Sets } from './sets.ts';

/** Sets of states as lanes: one array of `words` each. The arrays made since `keep` are used again after `reset`. */
export interface LaneSets extends Sets<Int32Array> {
  readonly keep: () => void;
  readonly reset: () => void;
}

export function makeLaneSets({ words, used }: Frame): LaneSets {
  const pool: Int32Array[] = [];
  let kept = 0;
  let next = 0;
  const fresh = (): Int32Array => {
    if (next === pool.length) pool.push(new Int32Array(words));
    return pool[next++]!;
  };
  const none = new Int32Array(words);
  const all = new Int32Array(words).fill(used);
  return {
    none,
    all,
    and(a, b) {
      if (a === none || b === none) return none;
      if (a === all) return b;
      if (b === all) return a;
      const out = fresh();
      for (let w = 0; w < words; w++) out[w] = a[w]! & b[w]!;
      return out;
    },
    or(a, b) {
      if (a === all || b === all) return all;
      if (a === none) return b;
      if (b === none) return a;
      const out = fresh();
      for (let w = 0; w < words; w++) out[w] = a[w]! | b[w]!;
      return out;
    },
    not(a) {
      if (a === none) return all;
      if (a === all) return none;
      const out = fresh();
      for (let w = 0; w < words; w++) out[w] = used & ~a[w]!;
      return out;
    },
    minus(a, b) {
      if (a === none || b === all) return none;
      if (b === none) return a;
      const out = fresh();
      for (let w = 0; w < words; w++) out[w] = a[w]! & ~b[w]!;
      return out;
    },
    isNone(a) {
      for (let w = 0; w < words; w++) if (a[w] !== 0) return false;
      return true;
    },
    keep() {
      kept = next;
    },
    reset() {
      next = kept;
    },
  };
}

/** Settings and positions as lanes, in arrays of their own. */
export function laneAtoms(frame: Frame, sets: Sets<Int32Array>): Atoms<Int32Array> {
  const { system, words, blocks, used, positions, combinations } = frame;
  return {
    sets,
    isSet(input, setting) {
      const block = lanesWhere(combinations, (inputs) => ((inputs >> input) & 1) === setting);
      return Int32Array.from({ length: words }, (_, w) => block[w % blocks]!);
    },
    stands: (mover, position) =>
      Int32Array.from({ length: words }, (_, w) =>
        positions[mover * system.places + Math.floor(w / blocks)] === position ? used : 0,
      ),
  };
}
