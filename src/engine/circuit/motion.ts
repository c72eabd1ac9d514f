import type { Load } from '../model/system.ts';
import type { Sweep } from './fast.ts';
import type { Frame } from './frame.ts';
import type { Nets } from './nets.ts';

/** The lanes of one word in which a load works. */
export function worksIn(
  load: Load,
  frame: Frame,
  nets: Nets,
  { line, neutral, loops }: Sweep,
  w: number,
): number {
  const { words } = frame;
  if (load.dead) return 0;
  if (load.spec.ownLoop) return loops.get(load)![nets.of[load.b]! * words + w]!;
  const a = nets.of[load.a]! * words + w;
  const b = nets.of[load.b]! * words + w;
  const across = (line[a]! & neutral[b]!) | (neutral[a]! & line[b]!);
  if (load.via < 0 || across === 0) return across;
  const via = nets.of[load.via]! * words + w;
  return across & ~(line[via]! | neutral[via]!);
}

/** Per mover and word: lanes in which it is on its way on, and on its way back. Row `mover` starts at `mover * words`. */
export interface Moves {
  readonly on: Int32Array;
  readonly back: Int32Array;
  /** Per word: lanes in which nothing moves. */
  readonly rest: Int32Array;
}

export function makeMoves({ system, words }: Frame): Moves {
  const size = system.movers.length * words;
  return { on: new Int32Array(size), back: new Int32Array(size), rest: new Int32Array(words) };
}

/** Which way every valve goes in every state at once. Fills and returns `moves`. */
export function sweepMoves(frame: Frame, nets: Nets, sweep: Sweep, moves: Moves): Moves {
  const { system, words, blocks, used, positions } = frame;
  moves.rest.fill(used);
  for (let m = 0; m < system.movers.length; m++) {
    const mover = system.movers[m]!;
    const { drives } = mover;
    const hold = mover.hold < 0 ? undefined : system.loads[mover.hold]!;
    const last = mover.positions.length - 1;
    for (let w = 0; w < words; w++) {
      const at = positions[m * system.places + ((w / blocks) | 0)]!;
      let driven = 0;
      for (let d = 0; d < drives.length; d++)
        driven |= worksIn(system.loads[drives[d]!]!, frame, nets, sweep, w);
      const held = hold ? worksIn(hold, frame, nets, sweep, w) : 0;
      const on = at < last && !mover.stuck ? driven : 0;
      const back = at > 0 && !mover.stuck && !mover.unsprung ? used & ~(driven | held) : 0;
      moves.on[m * words + w] = on;
      moves.back[m * words + w] = back;
      moves.rest[w]! &= ~(on | back);
    }
  }
  return moves;
}
