import { sweep } from '../circuit/fast.ts';
import { worksIn } from '../circuit/motion.ts';
import { mergeNets, type Nets } from '../circuit/nets.ts';
import type { Failure } from '../faults/failure.ts';
import type { InputBits, System } from '../model/system.ts';
import { type Wire, wireKey } from '../model/wiring.ts';
import {
  type Bench,
  closedRow,
  type Lanes,
  noLanes,
  type Stay,
  staysOf,
  type Ways,
  wordFrame,
} from './bench.ts';
import { type Candidate, withFault } from './candidate.ts';
import type { Setup } from './setup.ts';

/** A candidate's own circuit in a setup. Stands until the next rig on the same bench. */
export interface Rig {
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly bench: Bench;
  readonly inputs: InputBits;
  /** Failures still there. */
  readonly left: readonly Failure[];
  readonly stays: readonly Stay[];
  readonly nets: Nets;
  readonly lanes: Lanes;
  /** Per mover: the position below which its latched lever does not let it go. */
  readonly floors: readonly number[];
}

/** Lays out a candidate's circuit with what was lifted, bridged and renewed. */
export function layOut(bench: Bench, setup: Setup, candidate: Candidate): Rig {
  const { lifted, bridges, inputs } = setup;
  const off = new Set(lifted.map(wireKey));
  const drawn = off.size === 0 ? setup.wires : setup.wires.filter((wire) => !off.has(wireKey(wire)));
  const { system, wires: found, left } = withFault(bench.system, drawn, candidate, setup.renewed);
  const wires = bridges.length === 0 ? found : [...found, ...bridges];
  const floors = system.movers.map(({ part }) => (setup.levers.has(system.parts[part]!.id) ? 1 : 0));
  const own = { bench, system, wires, inputs, left, stays: staysOf(bench, system), floors };
  if (wires !== setup.wires || own.stays.length > 0) {
    bench.own.known.fill(0);
    return { ...own, nets: mergeNets(system, wires), lanes: bench.own };
  }
  if (bench.drawn?.inputs !== inputs || bench.drawn.wires !== wires) {
    bench.drawn = {
      inputs,
      wires,
      nets: mergeNets(system, wires),
      lanes: noLanes(bench.system, bench.words),
    };
  }
  const { nets, lanes } = bench.drawn;
  return { ...own, nets, lanes };
}

/** Per contact: the lanes of one word in which it is closed. The answer lives in the bench until its next use. */
export const closedIn = ({ bench, inputs, stays }: Rig, w: number): Int32Array =>
  closedRow(bench, inputs, stays, w);

/** Makes sure that a word is worked out. */
function sweepWord(rig: Rig, w: number): void {
  const { bench, nets, lanes } = rig;
  if (lanes.known[w] === 1) return;
  lanes.known[w] = 1;
  const frame = wordFrame(rig.system, closedIn(rig, w));
  const live = sweep(frame, nets, bench.room);
  const { loads, supply } = bench.system;
  for (let load = 0; load < loads.length; load++) {
    lanes.works[w * loads.length + load] = worksIn(loads[load]!, frame, nets, live, 0);
  }
  lanes.shorts[w] = live.line[nets.of[supply.neutral]!]! | live.line[nets.of[supply.earth]!]!;
}

/** A place, and whether the fuse has blown: `place`, or `place + places` once it has. */
export type Standing = number;

/** Whether a load works where the system stands. With the fuse blown only a loop of a part's own does. */
export function loadWorks(rig: Rig, load: number, standing: Standing): boolean {
  const { places } = rig.system;
  const place = standing % places;
  sweepWord(rig, place >> 5);
  return ((working(rig, load, place >> 5, standing >= places) >>> (place & 31)) & 1) === 1;
}

/** Lanes of a word that is worked out in which a load works, or those with the fuse blown. */
const working = ({ system: { loads }, lanes }: Rig, load: number, w: number, blown: boolean): number => {
  const { dead, spec } = loads[load]!;
  return dead || (blown && !spec.ownLoop) ? 0 : lanes.works[w * loads.length + load]!;
};

/** Works the ways of one word out, once. */
function waysIn(rig: Rig, { on, back, known }: Ways, w: number, blown: boolean): void {
  if (known[w] === 1) return;
  known[w] = 1;
  sweepWord(rig, w);
  const { movers } = rig.system;
  for (let m = 0; m < movers.length; m++) {
    const { drives, hold, positions, stuck, unsprung } = movers[m]!;
    if (stuck) {
      on[w * movers.length + m] = back[w * movers.length + m] = 0;
      continue;
    }
    let driven = 0;
    for (const drive of drives) driven |= working(rig, drive, w, blown);
    const held = hold < 0 ? 0 : working(rig, hold, w, blown);
    const standing = rig.bench.standing[m]!;
    const first = standing[0]![w]!;
    const low = rig.floors[m] === 0 ? 0 : first;
    const lowest = rig.floors[m] === 0 ? first : first | standing[1]![w]!;
    on[w * movers.length + m] = (driven & ~standing[positions.length - 1]![w]!) | low;
    back[w * movers.length + m] = unsprung ? 0 : ~(driven | held | lowest);
  }
}

/** From each standing, where one move leads, as far as somebody asked. */
class Moves {
  readonly rig: Rig;
  /** Some mover goes on from one standing and back from another, so that the system may hunt. */
  turns = false;
  readonly #seen: Uint8Array;

  constructor(rig: Rig) {
    this.rig = rig;
    rig.bench.whole.known.fill(0);
    rig.bench.blown.known.fill(0);
    this.#seen = new Uint8Array(2 * rig.system.movers.length);
  }

  /** Calls `to` with each standing that one move leads to; whether there is any. */
  from(standing: Standing, to: (standing: Standing) => void): boolean {
    const { places, movers } = this.rig.system;
    const blown = standing >= places;
    const place = blown ? standing - places : standing;
    const ways = blown ? this.rig.bench.blown : this.rig.bench.whole;
    const { on, back } = ways;
    waysIn(this.rig, ways, place >> 5, blown);
    if (!blown && ((this.rig.lanes.shorts[place >> 5]! >>> (place & 31)) & 1) === 1) {
      to(standing + places);
      return true;
    }
    const row = (place >> 5) * movers.length;
    let moves = false;
    for (let m = 0; m < movers.length; m++) {
      const way = ((on[row + m]! >>> (place & 31)) & 1) - ((back[row + m]! >>> (place & 31)) & 1);
      if (way === 0) continue;
      moves = true;
      this.#note(blown ? movers.length + m : m, way);
      to(standing + way * movers[m]!.stride);
    }
    return moves;
  }

  #note(mover: number, way: number): void {
    const seen = this.#seen[mover]! | (way > 0 ? 1 : 2);
    this.#seen[mover] = seen;
    if (seen === 3) this.turns = true;
  }
}

/**
 * Where the system can come to rest from any of these standings, through every order of movement: several answers when
 * the outcome is a race. A short on the way blows the fuse for good. Valves that hunt for ever may stand anywhere from
 * where they come to rest no more.
 */
export function settle(rig: Rig, starts: readonly Standing[]): Standing[] {
  const moves = new Moves(rig);
  const { met } = rig.bench;
  const queue: Standing[] = [];
  const reach = (standing: Standing) => {
    if (met[standing] === 1) return;
    met[standing] = 1;
    queue.push(standing);
  };
  starts.forEach(reach);
  const rests: Standing[] = [];
  for (const standing of queue) if (!moves.from(standing, reach)) rests.push(standing);
  for (const standing of queue) met[standing] = 0;
  // Where no mover ever turns round, every way has its end.
  return moves.turns ? [...rests, ...restless(moves, queue, new Set(rests))] : rests;
}

/** Of all standings met, those from which no rest can be reached. */
function restless(moves: Moves, queue: readonly Standing[], ends: Set<Standing>): Standing[] {
  let left = queue.filter((standing) => !ends.has(standing));
  // Standings are met before those that they lead to: going backwards, one round mostly does it.
  for (let before = -1; left.length !== before; ) {
    before = left.length;
    for (const standing of left.toReversed()) {
      let rests = false;
      moves.from(standing, (to) => {
        rests ||= ends.has(to);
      });
      if (rests) ends.add(standing);
    }
    left = left.filter((standing) => !ends.has(standing));
  }
  return left;
}

/**
 * Whether line could ever come to neutral or earth with no load between, whatever is set and wherever the valves stand:
 * said too often rather than too seldom.
 */
export function mayShort({ system: { supply, supplies, contacts }, nets, stays }: Rig): boolean {
  const open = new Set(stays.flatMap(([c, lanes]) => (lanes === 0 ? [c] : [])));
  const live = new Set(supplies.map(({ line }) => nets.of[line]!));
  for (let before = 0; before !== live.size; ) {
    before = live.size;
    contacts.forEach(({ a, b }, c) => {
      const [p, q] = [nets.of[a]!, nets.of[b]!];
      if (!open.has(c) && (live.has(p) || live.has(q))) live.add(p).add(q);
    });
  }
  return live.has(nets.of[supply.neutral]!) || live.has(nets.of[supply.earth]!);
}
