/** Searches look at this many worlds at most, an even sample of all. */
const SAMPLE = 64;

/** Bits too few to call a test worth doing. */
export const NOTHING = 1e-9;

/** An even sample of a list. */
export const sample = <T>(all: readonly T[], most = SAMPLE): readonly T[] =>
  all.length <= most
    ? all
    : Array.from({ length: most }, (_, k) => all[Math.floor((k * all.length) / most)]!);

/** What a test costs: `own` each time, `entry` once for all tests that come after it. */
export interface Price {
  readonly own: number;
  readonly entry: number;
}

/**
 * What a test is worth: bits for its cost. Isolation and covers are shared with the tests that will follow them: about
 * one for each halving that is left to do.
 */
export const worthOf = (gain: number, { own, entry }: Price, left: number): number =>
  gain / (own + entry / Math.max(1, Math.log2(left)));
