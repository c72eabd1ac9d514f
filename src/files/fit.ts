import { alternatives, type System, type When } from '../engine/model/system.ts';
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
    const terminals = kind.terminals.map((terminal) => terminal.id);
    for (const name of Object.keys(given?.cores ?? {})) known(name, terminals, 'parts', id, 'cores');
    for (const [k, name] of (given?.sleeved ?? []).entries())
      known(name, terminals, 'parts', id, 'sleeved', k);
    const positions = kind.motion?.positions ?? [];
    for (const position of Object.keys(given?.positions ?? {}))
      known(position, positions, 'parts', id, 'positions');
  });

  const ports = parts.flatMap(({ id, kind }) => (kind.ports ?? []).map((port) => `${id}/${port}`));
  spec.pipes.forEach((ends, k) => {
    for (const [side, end] of ends.entries()) known(end, ports, 'pipes', k, side);
  });

  const takers = parts
    .filter(({ kind }) => kind.heat === 'takes' || kind.heat === 'warms')
    .map(({ id }) => id);
  const workers = parts.filter(({ kind }) => kind.work).map(({ id }) => id);
  const supplies = parts.filter(({ kind }) => kind.supply).map(({ id }) => id);
  const demandIds = spec.demands.map(({ id }) => id);
  const valves = movers.flatMap(({ part }) => parts[part]?.id ?? []);
  const inputIds = inputs.map((input) => input.id);
  const settingsOk = (when: When, ...path: PropertyKey[]) => {
    alternatives(when).forEach((settings, k) => {
      const at = Array.isArray(when) ? [...path, k] : path;
      for (const [name, setting] of Object.entries(settings)) {
        known(name, inputIds, ...at);
        known(setting, inputs.find((input) => input.id === name)?.settings ?? [], ...at, name);
      }
    });
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
  spec.demands.forEach(({ id, when, slack, overheated, heats, valve, supply, yields, runs, may }, k) => {
    settingsOk(when, 'demands', k, 'when');
    settingsOk(slack ?? {}, 'demands', k, 'slack');
    settingsOk(overheated ?? {}, 'demands', k, 'overheated');
    known(heats, takers, 'demands', k, 'heats');
    if (supply !== undefined) known(supply, supplies, 'demands', k, 'supply');
    if (yields !== undefined)
      known(
        yields,
        demandIds.filter((other) => other !== id),
        'demands',
        k,
        'yields',
      );
    for (const [r, part] of (runs ?? []).entries()) known(part, workers, 'demands', k, 'runs', r);
    for (const [m, part] of (may ?? []).entries()) known(part, workers, 'demands', k, 'may', m);
    if (valve !== undefined) known(valve, valves, 'demands', k, 'valve');
  });
}
