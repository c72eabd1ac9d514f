import type { DaySettings } from './settings.ts';

/** Kelvin that the store must fall below the relief valve's set temperature before it counts as shut again. */
const RELIEF_RESEAT = 2;
/** Kelvin that the flow must fall before a limit that resets itself lets the burner light. Assumption. */
const LIMIT_RESET = 10;

/** What the temperatures have done to the controls outside the wiring. */
export interface Controls {
  /** The cylinder thermostat's own idea: below its setting. Its contact may have failed. */
  calling: boolean;
  /** The cut-out has felt its trip temperature; latched. */
  tripped: boolean;
  relieving: boolean;
  /** The boiler's limit has stopped the burner. */
  limited: boolean;
  burning: boolean;
}

export const startControls = ({ startStore, thermostat, differential }: DaySettings): Controls => ({
  calling: startStore <= thermostat - differential,
  tripped: false,
  relieving: false,
  limited: false,
  burning: false,
});

/** What has just changed over, for the events of the day. */
export type Change = 'satisfied' | 'calls' | 'trips' | 'lifts' | 'reseats' | 'limit' | 'limit resets';

/** Lets the controls feel the temperatures; tells of each one that changes over. */
export function feel(
  controls: Controls,
  settings: DaySettings,
  store: number,
  flow: number,
  tell: (change: Change) => void,
): void {
  const { thermostat, differential, cutOut, reliefOpens, boilerLimit, limitResets } = settings;
  if (controls.calling ? store >= thermostat : store <= thermostat - differential) {
    controls.calling = !controls.calling;
    tell(controls.calling ? 'calls' : 'satisfied');
  }
  if (!controls.tripped && store >= cutOut) {
    controls.tripped = true;
    tell('trips');
  }
  if (controls.relieving ? store < reliefOpens - RELIEF_RESEAT : store > reliefOpens) {
    controls.relieving = !controls.relieving;
    tell(controls.relieving ? 'lifts' : 'reseats');
  }
  if (!controls.limited && flow >= boilerLimit) {
    controls.limited = true;
    tell('limit');
  } else if (controls.limited && limitResets && flow < boilerLimit - LIMIT_RESET) {
    controls.limited = false;
    tell('limit resets');
  }
}

/**
 * The burner's output now, W. It turns down across the band about the boiler's thermostat setting, goes out at the top
 * of the band and lights again at the bottom.
 * @param controlled whether the boiler's own thermostat works
 */
export function burn(
  controls: Controls,
  settings: DaySettings,
  fires: boolean,
  controlled: boolean,
  flow: number,
): number {
  const { boilerKilowatts, flow: middle, flowBand, leastOutput } = settings;
  const full = boilerKilowatts * 1000;
  const top = middle + flowBand / 2;
  if (!fires || controls.limited) controls.burning = false;
  else if (!controlled) controls.burning = true;
  else if (controls.burning ? flow >= top : flow <= top - flowBand) controls.burning = !controls.burning;
  if (!controls.burning) return 0;
  if (!controlled) return full;
  return full * Math.min(1, Math.max(leastOutput, (top - flow) / flowBand));
}
