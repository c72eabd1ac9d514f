import { makeSweepRoom, sweep } from '../circuit/fast.ts';
import { type Frame, makeFrame } from '../circuit/frame.ts';
import { laneAtoms, makeLaneSets } from '../circuit/lane-sets.ts';
import { type Moves, makeMoves, sweepMoves, worksIn } from '../circuit/motion.ts';
import { mergeNets } from '../circuit/nets.ts';
import { anyOf } from '../circuit/sets.ts';
import { exploreLanes, makeReach, type Reach } from '../explore/reach.ts';
import { findWays } from '../explore/ways.ts';
import type { Load, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { stateRules } from '../rules/index.ts';
import type { RuleText } from '../rules/rule.ts';
import { type LiveSets, makeGround, makeWork } from '../rules/sets-view.ts';
import { listBroken, sayVerdict } from './findings.ts';
import type { Verdict } from './verdict.ts';

/** How many lanes are set. */
export function countLanes(lanes: Int32Array): number {
  let count = 0;
  for (let word of lanes) for (; word !== 0; word &= word - 1) count++;
  return count;
}

/** Everything known about one wiring, before it is put in words. The arrays are used again by the next judging. */
export interface Sweeping {
  readonly frame: Frame;
  readonly moves: Moves;
  readonly reach: Reach;
  /** Lanes in which a boiler fires, a pump pumps. */
  readonly fires: Int32Array;
  readonly pumps: Int32Array;
  /** Per state rule, in the order of `stateRules`: the lanes that break it. */
  readonly broken: readonly Int32Array[];
}

/** Makes the judge of a system: everything that does not depend on the wiring is worked out here, once. */
export function makeJudge(system: System) {
  const frame = makeFrame(system);
  const room = makeSweepRoom(frame);
  const moves = makeMoves(frame);
  const reach = makeReach(frame);
  const sets = makeLaneSets(frame);
  const ground = makeGround(system, laneAtoms(frame, sets));
  const work = makeWork(ground);
  const tests = stateRules.map(({ where }) => where(ground));
  const doers = (does: 'fires' | 'pumps') =>
    system.parts.flatMap(({ kind }, part) => (kind.work?.does === does ? [part] : []));
  const [fire, pump] = [doers('fires'), doers('pumps')];
  sets.keep();
  const worked = new Map(system.loads.map((load) => [load, new Int32Array(frame.words)]));

  /** All states of the wiring against all rules about states. Wires must name terminals of the system. */
  function sweepStates(wires: readonly Wire[]): Sweeping {
    const nets = mergeNets(system, wires);
    sweep(frame, nets, room);
    sweepMoves(frame, nets, room, moves);
    exploreLanes(frame, moves, reach);
    sets.reset();
    const row = (lanes: Int32Array) => (node: number) => {
      const first = nets.of[node]! * frame.words;
      return lanes.subarray(first, first + frame.words);
    };
    const works = (load: Load) => {
      const lanes = worked.get(load)!;
      for (let w = 0; w < frame.words; w++) lanes[w] = worksIn(load, frame, nets, room, w);
      return lanes;
    };
    const working = work.working(works);
    const live: LiveSets<Int32Array> = {
      line: row(room.line),
      neutral: row(room.neutral),
      earth: row(room.earth),
      lineOf: (supply, node) => row(room.lines[supply]!)(node),
      neutralOf: (supply, node) => row(room.neutrals[supply]!)(node),
      working,
      heated: work.heated(working),
      hunting: reach.hunting,
    };
    const broken = stateRules.map(({ scope }, r) =>
      sets.and(scope === 'rest' ? reach.judged : reach.met, tests[r]!(live)),
    );
    const doing = (parts: readonly number[]) =>
      anyOf(
        sets,
        parts.map((part) => working[part]!),
      );
    return { frame, moves, reach, fires: doing(fire), pumps: doing(pump), broken };
  }

  const failedIn = ({ broken }: Sweeping) =>
    stateRules
      .map((rule, r) => ({ rule, lanes: broken[r]! }))
      .filter(({ lanes }) => lanes.some((word) => word !== 0));

  /** Judges a wiring: every state, every rule, each finding with its shortest witness. */
  function judge(wires: readonly Wire[]): Verdict {
    const failed = failedIn(sweepStates(wires));
    const ways = findWays(
      frame,
      moves,
      failed.map(({ lanes }) => lanes),
    );
    const failures = failed.map(({ rule, lanes }, k) => ({
      rule,
      way: ways[k]!,
      failing: countLanes(lanes),
    }));
    return sayVerdict(system, wires, failures, countLanes(reach.judged));
  }

  /** See `Judging`. */
  function rulesBroken(wires: readonly Wire[]): readonly RuleText[] {
    const failed = failedIn(sweepStates(wires));
    return listBroken(
      system,
      wires,
      failed.map(({ rule }) => rule),
    );
  }

  return { frame, judge, rulesBroken, sweepStates };
}

/** A judge that holds every state of a system side by side. */
export type Judge = ReturnType<typeof makeJudge>;
