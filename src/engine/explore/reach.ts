import type { Frame } from '../circuit/frame.ts';
import type { Moves } from '../circuit/motion.ts';
import type { Place } from '../model/system.ts';

/** Which states a wired system can be in, as lanes per word. */
export interface Reach {
  /** Passed through or rested in, in some order of movement. */
  readonly met: Int32Array;
  /** Rested in: the states to judge. */
  readonly judged: Int32Array;
  /** Met, and no resting state can follow: the valves hunt for ever. */
  readonly hunting: Int32Array;
}

export const makeReach = ({ words }: Frame): Reach => ({
  met: new Int32Array(words),
  judged: new Int32Array(words),
  hunting: new Int32Array(words),
});

/**
 * Every combination of inputs, entered from every resting place reachable from cold, through every order of
 * movement. Starts from these places: cold, with all valves unpowered (place 0), unless told. Fills and returns `reach`.
 */
export function exploreLanes(
  frame: Frame,
  moves: Moves,
  reach: Reach,
  starts: readonly Place[] = [0],
): Reach {
  const { system, blocks, words, used } = frame;
  const { met, judged, hunting } = reach;
  const movers = system.movers.length;
  met.fill(0);
  for (const place of starts) met.fill(used, place * blocks, (place + 1) * blocks);
  // From a resting place any combination may be set next, so a place rested in once is met in all lanes.
  for (let grown = true; grown; ) {
    for (let changed = true; changed; ) {
      changed = false;
      for (let w = 0; w < words; w++) {
        const here = met[w]!;
        if (here === 0) continue;
        for (let m = 0; m < movers; m++) {
          const step = system.movers[m]!.stride * blocks;
          const on = here & moves.on[m * words + w]!;
          if (on & ~met[w + step]!) {
            met[w + step]! |= on;
            changed = true;
          }
          const back = here & moves.back[m * words + w]!;
          if (back & ~met[w - step]!) {
            met[w - step]! |= back;
            changed = true;
          }
        }
      }
    }
    grown = false;
    for (let w = 0; w < words; w++) {
      if ((met[w]! & moves.rest[w]!) === 0) continue;
      const first = w - (w % blocks);
      for (let b = first; b < first + blocks; b++) {
        if (met[b] === used) continue;
        met[b] = used;
        grown = true;
      }
    }
  }
  for (let w = 0; w < words; w++) judged[w] = met[w]! & moves.rest[w]!;
  findHunting(frame, moves, reach);
  for (let w = 0; w < words; w++) hunting[w] = met[w]! & ~hunting[w]!;
  return reach;
}

/** Leaves in `hunting` the lanes from which a resting place can be reached. */
function findHunting(frame: Frame, moves: Moves, { hunting }: Reach): void {
  const { system, blocks, words } = frame;
  hunting.set(moves.rest);
  for (let changed = true; changed; ) {
    changed = false;
    for (let w = 0; w < words; w++) {
      let can = hunting[w]!;
      for (let m = 0; m < system.movers.length; m++) {
        const step = system.movers[m]!.stride * blocks;
        const on = moves.on[m * words + w]!;
        const back = moves.back[m * words + w]!;
        if (on !== 0) can |= on & hunting[w + step]!;
        if (back !== 0) can |= back & hunting[w - step]!;
      }
      if (can !== hunting[w]) {
        hunting[w] = can;
        changed = true;
      }
    }
  }
}
