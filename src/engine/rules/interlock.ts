import { alternatives, type System } from '../model/system.ts';

/** What stands between a call and the boiler, as Approved Document L asks of the controls. */
export interface Interlock {
  /** Demands (in words) that no thermostat ends: the boiler goes on for as long as the clock says. */
  readonly withoutThermostat: readonly string[];
}

/** Inputs that a thermostat works: something warm enough ends the call. */
const thermostatInputs = ({ parts, inputs }: System): ReadonlySet<string> =>
  new Set(
    parts.flatMap(({ kind, slots }) =>
      (kind.inputs ?? [])
        .filter(({ settings }) => settings[1] === 'calling')
        .flatMap(({ slot }) => inputs[slots[slot]!]?.id ?? []),
    ),
  );

/**
 * Whether every call that fires a boiler ends by a thermostat (Approved Document L, Volume 1, 2021 edition, 5.15 and
 * 5.25: with no demand for heat the appliance and the pump are off). A matter of the layout, not of its wiring.
 */
export function interlockOf(system: System): Interlock {
  const thermostats = thermostatInputs(system);
  const open = system.spec.demands.filter(({ when, runs }) => {
    const boilers = system.parts.filter(({ kind }) => kind.work?.does === 'fires').map(({ id }) => id);
    const fires = runs === undefined ? boilers.length > 0 : runs.some((part) => boilers.includes(part));
    const ended = (settings: Readonly<Record<string, string>>) =>
      Object.keys(settings).some((input) => thermostats.has(input) || settings[input] === 'freezing');
    return fires && !alternatives(when).every(ended);
  });
  return { withoutThermostat: open.map(({ says }) => says) };
}
