import { evaluate, nextPlaces } from '../circuit/plain.ts';
import type { Config, Place, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** A configuration as one number, for sets. */
export const configKey = (system: System, { inputs, place }: Config): number =>
  inputs * system.places + place;

export interface PlainReach {
  readonly met: ReadonlySet<number>;
  readonly judged: ReadonlySet<number>;
  readonly hunting: ReadonlySet<number>;
}

/** The same answer as the fast exploration, found one state and one move at a time. */
export function explorePlain(system: System, wires: readonly Wire[]): PlainReach {
  const combinations = 1 << system.inputs.length;
  const following = new Map<number, Place[]>();
  const next = (config: Config): Place[] => {
    const key = configKey(system, config);
    const known = following.get(key);
    if (known) return known;
    const found = nextPlaces(system, evaluate(system, wires, config), config.place);
    following.set(key, found);
    return found;
  };

  const met = new Set<number>();
  const judged = new Set<number>();
  const restPlaces = new Set<Place>([0]);
  for (const from of restPlaces) {
    for (let inputs = 0; inputs < combinations; inputs++) {
      const places = new Set<Place>([from]);
      for (const place of places) {
        met.add(configKey(system, { inputs, place }));
        const after = next({ inputs, place });
        for (const to of after) places.add(to);
        if (after.length > 0) continue;
        judged.add(configKey(system, { inputs, place }));
        restPlaces.add(place);
      }
    }
  }

  const hunting = new Set<number>();
  for (const key of met) {
    const inputs = Math.floor(key / system.places);
    const ahead = new Set<Place>([key % system.places]);
    let rests = false;
    for (const place of ahead) {
      const after = next({ inputs, place });
      if (after.length === 0) rests = true;
      for (const to of after) ahead.add(to);
    }
    if (!rests) hunting.add(key);
  }
  return { met, judged, hunting };
}
