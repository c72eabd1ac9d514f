import { evaluate, nextPlaces } from '../engine/circuit/plain.ts';
import type { InputBits, Place, System } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';

/** Every place in which the valves can come to rest with these settings, from any of some places; none when they hunt. */
export function restsFrom(
  system: System,
  wires: readonly Wire[],
  inputs: InputBits,
  from: Iterable<Place>,
): Place[] {
  const passed = new Set<Place>(from);
  const rests: Place[] = [];
  for (const place of passed) {
    const next = nextPlaces(system, evaluate(system, wires, { inputs, place }), place);
    if (next.length === 0) rests.push(place);
    for (const to of next) passed.add(to);
  }
  return rests;
}
