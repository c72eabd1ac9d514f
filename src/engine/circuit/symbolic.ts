import type { Load } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { mergeNets, type Nets } from './nets.ts';
import { anyOf } from './sets.ts';
import type { Symbols } from './symbols.ts';

/** What a wiring does in every state at once, as diagrams; the same in meaning as `sweep` and `sweepMoves`. */
export interface SymbolicCircuit {
  /** States in which a node is joined to line, neutral, earth. */
  readonly line: (node: number) => number;
  readonly neutral: (node: number) => number;
  readonly earth: (node: number) => number;
  /** The same for the line and the neutral of one supply. */
  readonly lineOf: (supply: number, node: number) => number;
  readonly neutralOf: (supply: number, node: number) => number;
  /** States in which a load works. */
  readonly works: (load: Load) => number;
  readonly moves: SymbolicMoves;
}

export interface SymbolicMoves {
  /** Per mover: states in which it is on its way on, and on its way back. */
  readonly on: readonly number[];
  readonly back: readonly number[];
  /** States in which nothing moves. */
  readonly rest: number;
}

/** Per net, the states in which it is joined to one of the sources by wires and closed contacts. */
function spread({ system, sets, closed }: Symbols, nets: Nets, sources: readonly number[]): number[] {
  const joined = new Array<number>(nets.count).fill(sets.none);
  const waiting = new Set(sources.map((source) => nets.of[source]!));
  for (const net of waiting) joined[net] = sets.all;
  const leaving: { to: number; through: number }[][] = joined.map(() => []);
  system.contacts.forEach(({ a, b }, contact) => {
    const [from, to] = [nets.of[a]!, nets.of[b]!];
    if (from === to) return;
    leaving[from]!.push({ to, through: closed[contact]! });
    leaving[to]!.push({ to: from, through: closed[contact]! });
  });
  // A set walked in order of arrival: a net that grows again is walked again.
  for (const net of waiting) {
    waiting.delete(net);
    for (const { to, through } of leaving[net]!) {
      const more = sets.or(joined[to]!, sets.and(joined[net]!, through));
      if (more === joined[to]) continue;
      joined[to] = more;
      waiting.add(to);
    }
  }
  return joined;
}

/** Works out a wiring. Wires must name terminals of the system. */
export function drawCircuit(symbols: Symbols, wires: readonly Wire[]): SymbolicCircuit {
  const { system, sets } = symbols;
  const { supplies, loads } = system;
  const nets = mergeNets(system, wires);
  const from = (...sources: number[]) => {
    const joined = spread(symbols, nets, sources);
    return (node: number): number => joined[nets.of[node]!]!;
  };
  const line = from(...supplies.map((supply) => supply.line));
  const neutral = from(...supplies.map((supply) => supply.neutral));
  const earth = from(...supplies.map((supply) => supply.earth));
  const alone = supplies.length === 1;
  const lines = supplies.map((supply) => (alone ? line : from(supply.line)));
  const neutrals = supplies.map((supply) => (alone ? neutral : from(supply.neutral)));

  const work = ({ a, b, via, dead, spec }: Load): number => {
    if (dead) return sets.none;
    if (spec.ownLoop) return from(a)(b);
    const across = sets.or(sets.and(line(a), neutral(b)), sets.and(neutral(a), line(b)));
    return via < 0 ? across : sets.minus(across, sets.or(line(via), neutral(via)));
  };
  const worked = new Map(loads.map((load) => [load, work(load)]));
  const works = (load: Load): number => worked.get(load)!;
  return {
    line,
    neutral,
    earth,
    lineOf: (supply, node) => lines[supply]!(node),
    neutralOf: (supply, node) => neutrals[supply]!(node),
    works,
    moves: findMoves(symbols, works),
  };
}

/** Which way every valve goes. */
function findMoves({ system, sets, stands }: Symbols, works: (load: Load) => number): SymbolicMoves {
  const working = (load: number) => (load < 0 ? sets.none : works(system.loads[load]!));
  const moves = system.movers.map(({ positions, drives, hold, stuck, unsprung }, mover) => {
    const driven = anyOf(sets, drives.map(working));
    const kept = sets.or(sets.or(driven, working(hold)), stands(mover, 0));
    return {
      on: stuck ? sets.none : sets.minus(driven, stands(mover, positions.length - 1)),
      back: stuck || unsprung ? sets.none : sets.not(kept),
    };
  });
  const on = moves.map((move) => move.on);
  const back = moves.map((move) => move.back);
  return { on, back, rest: sets.not(anyOf(sets, [...on, ...back])) };
}
