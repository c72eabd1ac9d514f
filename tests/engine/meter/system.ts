import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { buildSystem } from '../../../src/engine/model/build.ts';
import { bitsOf, type Config, type Settings, type System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';

const file = new URL('../../../content/systems/unvented-three-port.yaml', import.meta.url);

/** The flagship system: a three-port valve and an unvented cylinder. */
export const system: System = buildSystem(parse(readFileSync(file, 'utf8')), findKind);

/** Wires from landings: each key joined to each of the terminals listed after it. */
export const land = (landings: Readonly<Record<string, string>>): Wire[] =>
  Object.entries(landings).flatMap(([strip, list]) => list.split(' ').map((end): Wire => [strip, end]));

/** A right wiring of the system, our own numbering. */
export const reference: readonly Wire[] = land({
  'strip/1': 'spur/L programmer/L boiler/L two-port/grey',
  'strip/2': 'programmer/CH-ON room-stat/COM',
  'strip/3': 'room-stat/CALL three-port/white',
  'strip/4': 'programmer/HW-ON cyl-stat/COM',
  'strip/5': 'programmer/HW-OFF cyl-stat/SAT three-port/grey',
  'strip/6': 'cyl-stat/CALL cut-out/IN',
  'strip/7': 'cut-out/OUT two-port/brown',
  'strip/8': 'two-port/orange three-port/orange boiler/SL pump/L',
  'strip/11': 'spur/N programmer/N room-stat/N three-port/blue two-port/blue pump/N boiler/N',
  'strip/12': 'spur/E three-port/earth two-port/earth pump/E boiler/E',
});

/** The wires with every wire that ends at `lifted` taken away, then those in `landed` added. */
export function rewire(lifted: readonly string[], landed: Readonly<Record<string, string>> = {}): Wire[] {
  return [...reference.filter((wire) => !lifted.some((end) => wire.includes(end))), ...land(landed)];
}

const on: Settings = { supply: 'on' };
/** Settings that ask for both services; everything else in these tests is a change from one of these. */
export const settings = {
  off: {},
  idle: on,
  water: { ...on, 'hot-water': 'on', cylinder: 'calling' },
  heating: { ...on, heating: 'on', room: 'calling' },
  both: { ...on, 'hot-water': 'on', cylinder: 'calling', heating: 'on', room: 'calling' },
  satisfied: { ...on, 'hot-water': 'on', heating: 'on', room: 'calling' },
} satisfies Record<string, Settings>;

/** A configuration from settings and positions by name; what is not named stands at rest. */
export function configOf(asked: Settings, positions: Readonly<Record<string, string>> = {}): Config {
  const place = system.movers.reduce((sum, mover) => {
    const wanted = positions[system.parts[mover.part]?.id ?? ''];
    return sum + (wanted === undefined ? 0 : mover.positions.indexOf(wanted) * mover.stride);
  }, 0);
  return { inputs: bitsOf(system, asked), place };
}
