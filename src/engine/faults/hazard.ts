import type { Demand, Settings, System } from '../model/system.ts';
import type { LanesView } from '../rules/lanes.ts';
import type { StateView } from '../rules/view.ts';

/** One place where a hazard is looked for: settings that hold while all others vary, and the demand it is about. */
export interface Watch {
  readonly fixed: Settings;
  readonly demand?: number;
  /** Nodes it looks at, where it looks at nodes. */
  readonly nodes?: readonly number[];
}

/** What a hazard may ask of all states at once: not which of them can be reached, for that is only worked out where it is there. */
export type HazardView = Pick<LanesView, 'frame' | 'nets' | 'sweep' | 'demands' | 'fires'>;

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

/** Lanes in which the boiler fires and the way to a demand's coil or radiators is open. */
export function heatedLanes({ frame, demands, fires }: HazardView, w: number, { demand }: Watch): number {
  return demands[demand ?? 0]!.open[(w / frame.blocks) | 0] ? fires[w]! : 0;
}
