import type { Place } from '../../model/system.ts';
import type { HeatWay } from '../../plant/store.ts';
import type { DayEvent } from './events.ts';
import type { DaySettings } from './settings.ts';

/** How things stand at one time. */
export interface Sample {
  readonly seconds: number;
  /** °C. */
  readonly store: number;
  readonly flow: number;
  /** The burner is alight. */
  readonly boiler: boolean;
  readonly pump: boolean;
  readonly place: Place;
}

export interface DayRun {
  readonly settings: DaySettings;
  /** Once a minute. */
  readonly samples: readonly Sample[];
  readonly events: readonly DayEvent[];
  /** Heat each way over the whole run, and what boiler water and store hold more at the end, J. */
  readonly heat: Readonly<Record<HeatWay | 'stored', number>>;
  /** Water that the relief valve let out, litres. */
  readonly relieved: number;
  /** The hottest the store has been, °C. */
  readonly hottest: number;
}
