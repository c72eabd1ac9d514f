import type { Settings, System } from '../engine/model/system.ts';
import { FileError, show } from './error.ts';
import { placeAt } from './place.ts';
import { oneOf } from './suggest.ts';

/**
 * Checks the names that the engine takes on trust: inputs and positions of parts, pipe ends, what demands and stores
 * speak of.
 * @throws FileError with the first name that nothing bears
 */
export function checkFit(system: System, file: string): void {
  const { spec, parts, inputs, movers } = system;
  const known = (name: string, names: readonly string[], ...path: PropertyKey[]) => {
    if (names.includes(name)) return;
    throw new FileError({ file, place: placeAt(path), expected: oneOf(name, names), found: show(name) });
  };

  parts.forEach(({ id, kind }) => {
    const given = spec.parts[id];
    const slots = (kind.inputs ?? []).map(({ slot }) => slot);
    for (const slot of Object.keys(given?.inputs ?? {})) known(slot, slots, 'parts', id, 'inputs');
    const positions = kind.motion?.positions ?? [];
    for (const position of Object.keys(given?.positions ?? {}))
      known(position, positions, 'parts', id, 'positions');
  });

  const ports = parts.flatMap(({ id, kind }) => (kind.ports ?? []).map((port) => `${id}/${port}`));
  spec.pipes.forEach((ends, k) => {
    for (const [side, end] of ends.entries()) known(end, ports, 'pipes', k, side);
  });

  const takers = parts.filter(({ kind }) => kind.heat === 'takes').map(({ id }) => id);
  const valves = movers.flatMap(({ part }) => parts[part]?.id ?? []);
  const settingsOk = (settings: Settings, ...path: PropertyKey[]) => {
    for (const [name, setting] of Object.entries(settings)) {
      known(
        name,
        inputs.map((input) => input.id),
        ...path,
      );
      known(setting, inputs.find((input) => input.id === name)?.settings ?? [], ...path, name);
    }
  };
  spec.stores?.forEach(({ heatSources }, k) => {
    heatSources.forEach(({ part, thermostat, cutOuts }, s) => {
      const at = ['stores', k, 'heatSources', s];
      known(part, Object.keys(spec.parts), ...at, 'part');
      if (thermostat !== undefined) known(thermostat, Object.keys(spec.inputs), ...at, 'thermostat');
      for (const [c, cutOut] of cutOuts.entries())
        known(cutOut, Object.keys(spec.inputs), ...at, 'cutOuts', c);
    });
  });
  spec.demands.forEach(({ when, slack, overheated, heats, valve }, k) => {
    settingsOk(when, 'demands', k, 'when');
    settingsOk(slack ?? {}, 'demands', k, 'slack');
    settingsOk(overheated ?? {}, 'demands', k, 'overheated');
    known(heats, takers, 'demands', k, 'heats');
    if (valve !== undefined) known(valve, valves, 'demands', k, 'valve');
  });
}
