import { anyOf } from '../circuit/sets.ts';
import type { SymbolicMoves } from '../circuit/symbolic.ts';
import type { Symbols } from '../circuit/symbols.ts';

/** Which states a wired system can be in, as diagrams; the same in meaning as `Reach`. */
export interface SymbolicReach {
  readonly met: number;
  readonly judged: number;
  readonly hunting: number;
}

/**
 * One mover at a time, all its moves until nothing is added, then the next: movers that do not influence each other
 * never meet half way. `pass` gives what can follow `states` by any moves in any order, `lead` what they can follow.
 */
export function makeWalks({ system, sets, standing, stands }: Symbols, { on, back }: SymbolicMoves) {
  const { and, or, none, isNone } = sets;
  const movers = system.movers.map(({ positions }, mover) => ({
    mover,
    // Per position: the states, whatever this mover does, in which it leaves that position for the next or the last.
    on: positions.map((_, position) => standing(on[mover]!, mover, position)),
    back: positions.map((_, position) => standing(back[mover]!, mover, position)),
  }));
  const walk = (states: number, forward: boolean): number => {
    let all = states;
    for (let before = -1; before !== all; ) {
      before = all;
      for (const { mover, on: ons, back: backs } of movers) {
        const at = ons.map((_, position) => standing(all, mover, position));
        let grown = false;
        const move = (from: number, to: number, when: number) => {
          if (isNone(when)) return false;
          const [source, target] = forward ? [from, to] : [to, from];
          const more = or(at[target]!, and(at[source]!, when));
          if (more === at[target]) return false;
          at[target] = more;
          grown = true;
          return true;
        };
        for (let changed = true; changed; ) {
          changed = false;
          for (let k = 0; k < at.length; k++) {
            if (k + 1 < at.length && move(k, k + 1, ons[k]!)) changed = true;
            if (k > 0 && move(k, k - 1, backs[k]!)) changed = true;
          }
        }
        if (grown)
          all = anyOf(
            sets,
            at.map((set, position) => and(set, stands(mover, position))),
          );
      }
    }
    return all;
  };
  return {
    pass: (states: number): number => (states === none ? none : walk(states, true)),
    lead: (states: number): number => (states === none ? none : walk(states, false)),
  };
}

/** All that can be met from cold, whatever is switched in whatever order; see `exploreLanes`. */
export function exploreSymbolic(symbols: Symbols, moves: SymbolicMoves): SymbolicReach {
  const { sets, inputs } = symbols;
  const { pass, lead } = makeWalks(symbols, moves);
  let met = unpowered(symbols);
  for (let before = -1; before !== met; ) {
    before = met;
    met = pass(met);
    // From a resting place any combination may be set next.
    met = sets.or(met, sets.exists(sets.and(met, moves.rest), inputs));
  }
  return { met, judged: sets.and(met, moves.rest), hunting: sets.minus(met, lead(moves.rest)) };
}

/** States in which every mover stands where it rests without supply. */
export const unpowered = ({ system, sets, stands }: Symbols): number =>
  system.movers.reduce((set, _, mover) => sets.and(set, stands(mover, 0)), sets.all);
