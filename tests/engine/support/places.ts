import { evaluate, nextPlaces } from '../../../src/engine/circuit/plain.ts';
import type { Settings } from '../../../src/engine/model/system.ts';
import { bitsOf, type Place, partNamed, positionOf, type System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { must } from './must.ts';

/** The place in which the named valves stand as told, and all others in their first position. */
export const placeOf = (system: System, positions: Readonly<Record<string, string>>): Place =>
  system.movers.reduce((place, { part, positions: names, stride }) => {
    const { id } = must(system.parts[part]);
    const index = names.indexOf(positions[id] ?? must(names[0]));
    if (index < 0) throw new Error(`${id} has no position ${positions[id]}`);
    return place + index * stride;
  }, 0);

/** What is live and what works with these settings and positions. */
export function look(system: System, wires: readonly Wire[], settings: Settings, place: Place) {
  const live = evaluate(system, wires, { inputs: bitsOf(system, settings), place });
  return {
    isLive: (terminal: string) => must(live.line[must(system.nodeOf.get(terminal), terminal)]),
    works: (part: string, load: string) =>
      must(
        live.works[
          system.loads.findIndex((l) => l.spec.id === load && must(system.parts[l.part]).id === part)
        ],
        `${part} ${load}`,
      ),
    next: nextPlaces(system, live, place),
  };
}

/** The positions one valve goes through until it rests, the first included. Only one valve may be on the move. */
export function travel(
  system: System,
  wires: readonly Wire[],
  settings: Settings,
  start: Place,
  valve: string,
) {
  const part = partNamed(system, valve);
  const passed: string[] = [];
  for (let place: Place | undefined = start; place !== undefined; ) {
    if (passed.length > 9) throw new Error(`${valve} does not come to rest`);
    passed.push(positionOf(system, part, place));
    const { next } = look(system, wires, settings, place);
    if (next.length > 1) throw new Error('more than one valve moves');
    place = next[0];
  }
  return passed;
}

/** Every place the valves can rest in after these settings are made at `start`, through every order of movement. */
export function restsAfter(
  system: System,
  wires: readonly Wire[],
  settings: Settings,
  start: Place,
): Place[] {
  const places = new Set([start]);
  return [...walk()];
  function* walk() {
    for (const place of places) {
      const { next } = look(system, wires, settings, place);
      for (const to of next) places.add(to);
      if (next.length === 0) yield place;
    }
  }
}
