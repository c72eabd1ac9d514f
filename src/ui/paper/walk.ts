import { restsFrom } from '../../course/rests.ts';
import { evaluate, partWorks } from '../../engine/circuit/plain.ts';
import { type Part, type Place, positionOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** One control set to another setting, by the input's id. */
export interface Change {
  readonly input: string;
  readonly setting: string;
}

/** Where a wired system stands: its settings as bits, and every place in which its valves may have come to rest. */
export interface Standing {
  readonly inputs: number;
  readonly places: readonly Place[];
}

/** Cold and switched off. */
export const cold: Standing = { inputs: 0, places: [0] };

/**
 * Sets controls one after the other and lets everything come to rest after each.
 * @throws RangeError for an input that the system does not have
 */
export function walk(
  system: System,
  wires: readonly Wire[],
  from: Standing,
  changes: readonly Change[],
): Standing {
  let { inputs, places } = from;
  for (const { input, setting } of changes) {
    const k = system.inputs.findIndex(({ id }) => id === input);
    const found = system.inputs[k];
    if (!found) throw new RangeError(`expected an input of ${system.spec.id}, found "${input}"`);
    inputs = setting === found.settings[1] ? inputs | (1 << k) : inputs & ~(1 << k);
    places = restsFrom(system, wires, inputs, places);
  }
  return { inputs, places };
}

/** Whether a part works, in each place in which the system may stand: true, false, or both where it depends. */
export function worksThere(system: System, wires: readonly Wire[], at: Standing, part: Part): Set<boolean> {
  const number = system.parts.indexOf(part);
  return new Set(
    at.places.map((place) =>
      partWorks(system, evaluate(system, wires, { inputs: at.inputs, place }), number),
    ),
  );
}

/** The positions in which a valve may stand, by the engine's names. */
export const standsThere = (system: System, at: Standing, valve: Part): Set<string> =>
  new Set(at.places.map((place) => positionOf(system, valve, place)));
