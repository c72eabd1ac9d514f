import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { System, SystemSpec } from '../../../src/engine/model/system.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { specs } from './specs.ts';

/** The flagship system and other heating loops of the kinds met on site. */
export const systems: ReadonlyMap<string, System> = new Map(
  [
    parse(
      readFileSync(new URL('../../../content/systems/unvented-three-port.yaml', import.meta.url), 'utf8'),
    ),
    ...specs,
  ].map((spec: SystemSpec) => [spec.id, buildSystem(spec, findKind)]),
);

export function systemNamed(id: string): System {
  const system = systems.get(id);
  if (!system) throw new Error(`no loop "${id}"`);
  return system;
}

/** The place in which each named valve stands in the named position, and the rest are at rest. */
export function placeOf(system: System, positions: Record<string, string>): number {
  return system.movers.reduce((sum, mover) => {
    const wanted = positions[system.parts[mover.part]?.id ?? ''];
    return sum + Math.max(0, mover.positions.indexOf(wanted ?? '')) * mover.stride;
  }, 0);
}
