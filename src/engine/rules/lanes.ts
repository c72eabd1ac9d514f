import type { Sweep } from '../circuit/fast.ts';
import { type Frame, lanesWhere, type Work } from '../circuit/frame.ts';
import { worksIn } from '../circuit/motion.ts';
import type { Nets } from '../circuit/nets.ts';
import { isCalled } from '../model/system.ts';
import { openWays } from '../plant/paths.ts';

/** What hazards need of demands and pipes, worked out once for a system: lanes per block, flags per place. */
export interface HeatLanes {
  /** Per demand: the lanes in which it is called. */
  readonly called: readonly Int32Array[];
  /** Per demand and heat source (in the order of `heatSources`): places in which heat can get to what is called. */
  readonly open: readonly (readonly Uint8Array[])[];
  /** Per heat source: places in which it can get anywhere. */
  readonly anywhere: readonly Uint8Array[];
}

/** Parts that bring heat, by number: boilers, immersions. */
export const heatSources = ({ system }: Frame): number[] =>
  system.parts.flatMap(({ kind }, part) => (kind.heat === 'gives' || kind.heat === 'warms' ? [part] : []));

export function heatLanes(frame: Frame): HeatLanes {
  const { system, combinations } = frame;
  const places = Array.from({ length: system.places }, (_, place) => openWays(system, place));
  const sources = heatSources(frame).map((part) => system.parts[part]!.id);
  const flags = (test: (ways: (typeof places)[number]) => boolean) =>
    Uint8Array.from(places, (ways) => (test(ways) ? 1 : 0));
  return {
    called: system.spec.demands.map((demand) =>
      lanesWhere(combinations, (inputs) => isCalled(system, inputs, demand)),
    ),
    open: system.spec.demands.map(({ heats }) =>
      sources.map((source) => flags((ways) => ways.get(source)!.has(heats))),
    ),
    anywhere: sources.map((source) => flags((ways) => ways.get(source)!.size > 0)),
  };
}

/** Per word, the lanes in which every load that the work needs is working; all for no work. Fills and returns `lanes`. */
export function sweepWork(
  frame: Frame,
  nets: Nets,
  sweep: Sweep,
  work: Work | undefined,
  lanes: Int32Array,
): Int32Array {
  const { words, used } = frame;
  const needs = work?.needs ?? [];
  for (let w = 0; w < words; w++) {
    let all = used;
    for (let n = 0; n < needs.length && all !== 0; n++) {
      let any = 0;
      for (const load of needs[n]!) any |= worksIn(load, frame, nets, sweep, w);
      all &= any;
    }
    lanes[w] = all;
  }
  return lanes;
}
