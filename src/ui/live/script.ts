import { restsFrom } from '../../course/rests.ts';
import { failPlace, failSystem } from '../../engine/faults/apply.ts';
import type { Failure } from '../../engine/faults/failure.ts';
import { bitsOf, type Config, type Settings, type System, settingsOf } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** A step of a script: what is changed, and why the circuit does what it then does. */
export interface ScriptStep {
  readonly set?: Settings;
  readonly says: string;
}

/** A state of the script. Where it begins has no words of its own. */
export interface Stop {
  readonly config: Config;
  readonly says: string;
}

/** The system as it is in the lesson, with what has failed in it. */
export interface Patient {
  readonly system: System;
  readonly failures: readonly Failure[];
}

/** A healthy system with these failures in it. */
export const failed = (healthy: System, failures: readonly Failure[]): Patient => ({
  system: failSystem(healthy, failures),
  failures,
});

/**
 * The states of a script, from cold: where it begins, then each step, the valves at rest after each. Where valves can
 * come to rest in several places it is the one reached in the fewest moves; where they never rest, the one before.
 * A first step that changes nothing is itself the beginning.
 */
export function playScript(
  { system, failures }: Patient,
  wires: readonly Wire[],
  start: Settings,
  steps: readonly ScriptStep[],
): readonly Stop[] {
  let now: Settings = settingsOf(system, 0);
  let place = failPlace(system, failures, 0);
  place = restsFrom(system, wires, 0, [place])[0] ?? place;
  const stops = [{ set: start, says: '' }, ...steps].map(({ set = {}, says }): Stop => {
    now = { ...now, ...set };
    const inputs = bitsOf(system, now);
    place = restsFrom(system, wires, inputs, [place])[0] ?? place;
    return { config: { inputs, place }, says };
  });
  return Object.keys(steps[0]?.set ?? {}).length === 0 && steps.length > 0 ? stops.slice(1) : stops;
}

/** A state as it stands in an address: the settings as bits, then where the valves are: `13.2`. */
export const stateText = ({ inputs, place }: Config): string => `${inputs}.${place}`;

/** A state out of an address, the valves at `place` unless it says where; undefined where the system has no such state. */
export function readState(system: System, text: string, place: number): Config | undefined {
  const [, bits, at] = /^(\d{1,7})(?:\.(\d{1,9}))?$/.exec(text) ?? [];
  const config = { inputs: Number(bits), place: at === undefined ? place : Number(at) };
  return bits !== undefined && config.inputs < 2 ** system.inputs.length && config.place < system.places
    ? config
    : undefined;
}
