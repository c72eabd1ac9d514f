import { type Sweep, sweep } from '../circuit/fast.ts';
import type { Frame } from '../circuit/frame.ts';
import { worksIn } from '../circuit/motion.ts';
import { mergeNets, type Nets } from '../circuit/nets.ts';
import type { Failure } from '../faults/failure.ts';
import type { Place, System } from '../model/system.ts';
import { type Wire, wireKey } from '../model/wiring.ts';
import { type Bench, frameOf } from './bench.ts';
import { type Candidate, withFault } from './candidate.ts';
import type { Setup } from './setup.ts';

/** A candidate's own circuit in a setup, swept for every place at once. Stands until the next rig on the same bench. */
export interface Rig {
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly bench: Bench;
  /** Failures still there. */
  readonly left: readonly Failure[];
  readonly frame: Frame;
  readonly nets: Nets;
  readonly live: Sweep;
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
  const frame = frameOf(bench, system, inputs);
  const floors = system.movers.map(({ part }) => (setup.levers.has(system.parts[part]!.id) ? 1 : 0));
  const own = { bench, system, wires, left, frame, floors };
  if (wires !== setup.wires || system.contacts !== bench.system.contacts) {
    const nets = mergeNets(system, wires);
    return { ...own, nets, live: sweep(frame, nets, bench.room) };
  }
  if (bench.swept?.inputs !== inputs || bench.swept.wires !== wires) {
    const nets = mergeNets(system, wires);
    sweep(frame, nets, bench.drawn);
    bench.swept = { inputs, wires, nets };
  }
  return { ...own, nets: bench.swept.nets, live: bench.drawn };
}

/** A place, and whether the fuse has blown: `place`, or `place + places` once it has. */
export type Standing = number;

const bit = (lanes: Int32Array, row: number, words: number, place: Place): number =>
  (lanes[row * words + (place >> 5)]! >>> (place & 31)) & 1;

/** Whether a load works where the system stands. With the fuse blown only a loop of a part's own does. */
export function loadWorks(rig: Rig, load: number, standing: Standing): boolean {
  const { places } = rig.system;
  const place = standing % places;
  return ((working(rig, load, place >> 5, standing >= places) >>> (place & 31)) & 1) === 1;
}

/** Lanes of word `w` in which a load works, or those with the fuse blown. */
const working = ({ system, frame, nets, live }: Rig, load: number, w: number, blown: boolean): number => {
  const one = system.loads[load]!;
  return blown && !one.spec.ownLoop ? 0 : worksIn(one, frame, nets, live, w);
};

/** Per mover and word: the lanes in which it goes on, and back. A latched lever lifts a valve off its seat and keeps it there. */
interface Ways {
  readonly on: Int32Array;
  readonly back: Int32Array;
}

function waysOf(rig: Rig, blown: boolean): Ways {
  const { system, bench, floors } = rig;
  const { words, standing } = bench;
  const on = new Int32Array(system.movers.length * words);
  const back = new Int32Array(on.length);
  system.movers.forEach(({ drives, hold, positions, stuck, unsprung }, m) => {
    if (stuck) return;
    const first = standing[m]![0]!;
    const last = standing[m]![positions.length - 1]!;
    for (let w = 0; w < words; w++) {
      let driven = 0;
      for (const drive of drives) driven |= working(rig, drive, w, blown);
      const held = hold < 0 ? 0 : working(rig, hold, w, blown);
      const low = floors[m] === 0 ? 0 : first[w]!;
      const lowest = floors[m] === 0 ? first[w]! : first[w]! | standing[m]![1]![w]!;
      on[m * words + w] = (driven & ~last[w]!) | low;
      back[m * words + w] = unsprung ? 0 : ~(driven | held | lowest);
    }
  });
  return { on, back };
}

/**
 * Where the system can come to rest from any of these standings, through every order of movement: several answers when
 * the outcome is a race. A short on the way blows the fuse for good. Valves that hunt for ever may stand anywhere they pass.
 */
export function settle(rig: Rig, starts: readonly Standing[]): Standing[] {
  const { system, frame, nets, live } = rig;
  const { places, movers, supply } = system;
  const { words } = frame;
  const [neutral, earth] = [nets.of[supply.neutral]!, nets.of[supply.earth]!];
  const whole = waysOf(rig, false);
  let dead: Ways | undefined;
  const met = new Uint8Array(2 * places);
  const queue: Standing[] = [];
  const reach = (standing: Standing) => {
    if (met[standing] === 1) return;
    met[standing] = 1;
    queue.push(standing);
  };
  starts.forEach(reach);
  const rests: Standing[] = [];
  for (const standing of queue) {
    const blown = standing >= places;
    const place = blown ? standing - places : standing;
    // Line joined to neutral or earth with no load between.
    if (!blown && (bit(live.line, neutral, words, place) | bit(live.line, earth, words, place)) === 1) {
      reach(standing + places);
      continue;
    }
    if (blown) dead ??= waysOf(rig, true);
    const { on, back } = blown ? dead! : whole;
    let moves = false;
    for (let m = 0; m < movers.length; m++) {
      const way = bit(on, m, words, place) - bit(back, m, words, place);
      if (way === 0) continue;
      moves = true;
      reach(standing + way * movers[m]!.stride);
    }
    if (!moves) rests.push(standing);
  }
  return rests.length > 0 ? rests : queue;
}
