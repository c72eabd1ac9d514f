import type { Sweep } from '../circuit/fast.ts';
import { type Frame, lanesOf } from '../circuit/frame.ts';
import { type Moves, worksIn } from '../circuit/motion.ts';
import type { Nets } from '../circuit/nets.ts';
import type { Reach } from '../explore/reach.ts';
import { openPaths } from '../plant/paths.ts';
import { atRest } from './view.ts';

/** What rules need of a demand, worked out once for a system: lanes per block, flags per place. */
export interface DemandLanes {
  readonly called: Int32Array;
  readonly mustMeet: Int32Array;
  readonly open: Uint8Array;
  readonly shut: Uint8Array;
}

export function demandLanes(frame: Frame): DemandLanes[] {
  const { system } = frame;
  const perPlace = (flag: (place: number) => boolean) =>
    Uint8Array.from({ length: system.places }, (_, place) => (flag(place) ? 1 : 0));
  return system.spec.demands.map(({ when, slack, heats, valve }) => {
    const called = lanesOf(frame, when);
    const excused = slack ? lanesOf(frame, slack) : called.map(() => 0);
    return {
      called,
      mustMeet: called.map((lanes, b) => lanes & ~excused[b]!),
      open: perPlace((place) => openPaths(system, place).has(heats)),
      shut: perPlace((place) => valve === undefined || atRest(system, valve, place)),
    };
  });
}

/** All states of a wired system at once, with everything a rule may ask of them. */
export interface LanesView {
  readonly frame: Frame;
  readonly nets: Nets;
  readonly sweep: Sweep;
  readonly moves: Moves;
  readonly reach: Reach;
  readonly demands: readonly DemandLanes[];
  /** Per word: lanes in which a boiler fires, a pump pumps. */
  readonly fires: Int32Array;
  readonly pumps: Int32Array;
}

/** Per word, the lanes in which every load that the work needs is working. Fills and returns `lanes`. */
export function sweepWork(
  frame: Frame,
  nets: Nets,
  sweep: Sweep,
  does: 'fires' | 'pumps',
  lanes: Int32Array,
): Int32Array {
  const { words, used } = frame;
  lanes.fill(0);
  for (const loads of frame.work[does]) {
    for (let w = 0; w < words; w++) {
      let all = used;
      for (let l = 0; l < loads.length && all !== 0; l++) all &= worksIn(loads[l]!, frame, nets, sweep, w);
      lanes[w]! |= all;
    }
  }
  return lanes;
}
