import type { Sweep } from '../circuit/fast.ts';
import type { Frame } from '../circuit/frame.ts';
import type { Nets } from '../circuit/nets.ts';
import type { Demand, Settings, System } from '../model/system.ts';
import type { HeatLanes } from '../rules/lanes.ts';
import type { StateView } from '../rules/view.ts';

/** One place where a hazard is looked for: settings that hold while all others vary, and the demand it is about. */
export interface Watch {
  readonly fixed: Settings;
  readonly demand?: number;
  /** Nodes it looks at, where it looks at nodes. */
  readonly nodes?: readonly number[];
}

/** What a hazard may ask of all states at once: not which of them can be reached, for that is only worked out where it is there. */
export interface HazardView {
  readonly frame: Frame;
  readonly nets: Nets;
  readonly sweep: Sweep;
  readonly heat: HeatLanes;
  /** Per part that brings heat, per word: the lanes in which it works. */
  readonly gives: readonly Int32Array[];
}

/** Something that must not happen, however many parts have failed. One file each. */
export interface Hazard {
  readonly id: string;
  readonly title: string;
  /** What it means for people in the house. */
  readonly says: string;
  /** What outside the wiring still stands in its way. */
  readonly beyond: string;
  /** Whether it must last (a resting state) or counts in passing too. */
  readonly scope: 'rest' | 'met';
  readonly watches: (system: System) => readonly Watch[];
  readonly there: (state: StateView, watch: Watch) => boolean;
  /** Lanes of word `w` in which it is there. */
  readonly lanes: (view: HazardView, w: number, watch: Watch) => number;
}

export const demandOf = (system: System, { demand }: Watch): Demand => system.spec.demands[demand ?? 0]!;

/** Lanes in which a heat source works and the way to a demand's coil or radiators is open. */
export function heatedLanes({ frame, heat, gives }: HazardView, w: number, { demand }: Watch): number {
  const open = heat.open[demand ?? 0]!;
  const place = (w / frame.blocks) | 0;
  let heated = 0;
  for (let g = 0; g < gives.length; g++) if (open[g]![place]) heated |= gives[g]![w]!;
  return heated;
}
