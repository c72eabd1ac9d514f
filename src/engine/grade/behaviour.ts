import { makeSweepRoom, sweep } from '../circuit/fast.ts';
import { type Frame, makeFrame } from '../circuit/frame.ts';
import { makeMoves, sweepMoves, worksIn } from '../circuit/motion.ts';
import { mergeNets } from '../circuit/nets.ts';
import { exploreLanes, makeReach } from '../explore/reach.ts';
import { type Config, positionOf, type Settings, type System, settingsOf } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/**
 * What a wired system does, as far as anybody outside can tell: for every combination of its inputs the states it can
 * rest in, and what works there. Where a terminal is numbered and which core goes where leaves no trace in it.
 * All lanes are those of `frame`; two behaviours compare when their systems have the same inputs, movers and workers.
 */
export interface Behaviour {
  readonly frame: Frame;
  /** Lanes in which it rests, reached from cold. */
  readonly rests: Int32Array;
  /** Lanes it passes through and from which it never comes to rest. */
  readonly hunts: Int32Array;
  /** Resting lanes in which line meets neutral or earth: the fuse blows, and nothing works. */
  readonly blows: Int32Array;
  /** Per part that does work, in the order of `frame.work`: the resting lanes in which it does it. */
  readonly works: readonly Int32Array[];
  /** Per node: joined to line in some state in which it rests. */
  readonly live: readonly boolean[];
}

/** One state a system rests in, in names. */
export interface RestRow {
  readonly config: Config;
  readonly settings: Settings;
  /** By the id of every part that moves: the position it rests in. */
  readonly positions: Readonly<Record<string, string>>;
  /** Ids of the parts that fire, pump or heat. */
  readonly works: readonly string[];
  readonly blows: boolean;
}

/**
 * Makes the observer of a system; the observer takes wires that name terminals of the system.
 * @throws Error when the system has too many states to go through one by one
 */
export function makeBehaviour(system: System): (wires: readonly Wire[]) => Behaviour {
  const frame = makeFrame(system);
  const room = makeSweepRoom(frame);
  const { words } = frame;
  return (wires) => {
    const nets = mergeNets(system, wires);
    sweep(frame, nets, room);
    const moves = sweepMoves(frame, nets, room, makeMoves(frame));
    const reach = exploreLanes(frame, moves, makeReach(frame));
    const blows = new Int32Array(words);
    for (const { neutral, earth } of system.supplies) {
      for (const node of [neutral, earth]) {
        const row = nets.of[node]! * words;
        for (let w = 0; w < words; w++) blows[w]! |= room.line[row + w]! & reach.judged[w]!;
      }
    }
    const works = frame.work.map(({ needs }) => {
      const lanes = reach.judged.slice();
      for (let w = 0; w < words; w++) {
        for (const group of needs) {
          let any = 0;
          for (const load of group) any |= worksIn(load, frame, nets, room, w);
          lanes[w]! &= any;
        }
        lanes[w]! &= ~blows[w]!;
      }
      return lanes;
    });
    const live = system.nodes.map((_, node) => {
      const row = nets.of[node]! * words;
      return reach.judged.some((rests, w) => (rests & room.line[row + w]!) !== 0);
    });
    return { frame, rests: reach.judged, hunts: reach.hunting, blows, works, live };
  };
}

/**
 * Lanes in which two behaviours differ: only one of them rests (or hunts) there, or they do not do the same. Both
 * systems must have the same inputs, movers and workers in the same order, whatever else differs.
 */
export function differing(one: Behaviour, two: Behaviour): Int32Array {
  const lanes = new Int32Array(one.rests.length);
  for (let w = 0; w < lanes.length; w++) {
    let apart = (one.rests[w]! ^ two.rests[w]!) | (one.hunts[w]! ^ two.hunts[w]!);
    apart |= one.blows[w]! ^ two.blows[w]!;
    one.works.forEach((works, k) => {
      apart |= works[w]! ^ two.works[k]![w]!;
    });
    lanes[w] = apart;
  }
  return lanes;
}

/** Every state in which it rests and that is among `lanes` (all of them unless told), by settings and then by place. */
export function restRows(
  { frame, rests, blows, works }: Behaviour,
  lanes = rests,
  most = Infinity,
): RestRow[] {
  const { system, blocks, combinations, work } = frame;
  const moving = system.movers.map(({ part }) => system.parts[part]!);
  const rows: RestRow[] = [];
  for (let lane = 0; lane < combinations.length && rows.length < most; lane++) {
    const inputs = combinations[lane]!;
    const settings = settingsOf(system, inputs);
    for (let place = 0; place < system.places; place++) {
      const isIn = (set: Int32Array) => ((set[place * blocks + (lane >> 5)]! >>> (lane & 31)) & 1) === 1;
      if (!isIn(rests) || !isIn(lanes)) continue;
      rows.push({
        config: { inputs, place },
        settings,
        positions: Object.fromEntries(moving.map((part) => [part.id, positionOf(system, part, place)])),
        works: work.flatMap(({ part }, k) => (isIn(works[k]!) ? [system.parts[part]!.id] : [])),
        blows: isIn(blows),
      });
    }
  }
  return rows;
}
