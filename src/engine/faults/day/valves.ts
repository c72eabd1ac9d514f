import { type Place, positionIndex, type System } from '../../model/system.ts';
import type { DaySettings } from './settings.ts';

/** Nearer than this to a position counts as there, in positions. */
const THERE = 1e-9;

/**
 * The valves of a system as they travel. A valve counts as in a position until it has reached the next one, so its
 * switches change over at the end of each move.
 */
export interface Valves {
  place: Place;
  /** Where each stands, in positions from rest; between two of them while it travels. */
  readonly at: number[];
}

export const valvesAt = (system: System, place: Place): Valves => ({
  place,
  at: system.movers.map((mover) => positionIndex(mover, place)),
});

type Strokes = Pick<DaySettings, 'motorSeconds' | 'springSeconds'>;

/** Positions a second, with the sign of the way it goes. */
const speed = (positions: number, way: number, { motorSeconds, springSeconds }: Strokes): number =>
  way === 0 ? 0 : (way * (positions - 1)) / (way > 0 ? motorSeconds : springSeconds);

/** Seconds until a valve reaches its next position, or Infinity while all stand. */
export function nextArrival(
  system: System,
  valves: Valves,
  ways: readonly number[],
  strokes: Strokes,
): number {
  let soonest = Number.POSITIVE_INFINITY;
  for (let m = 0; m < ways.length; m++) {
    const way = ways[m]!;
    if (way === 0) continue;
    const mover = system.movers[m]!;
    const left = positionIndex(mover, valves.place) + way - valves.at[m]!;
    soonest = Math.min(soonest, left / speed(mover.positions.length, way, strokes));
  }
  return soonest;
}

/** Lets the valves travel for some seconds, at most until the next arrival. */
export function travel(
  system: System,
  valves: Valves,
  ways: readonly number[],
  strokes: Strokes,
  seconds: number,
): void {
  const { place } = valves;
  for (let m = 0; m < ways.length; m++) {
    const way = ways[m]!;
    const mover = system.movers[m]!;
    const from = positionIndex(mover, place);
    // A valve that stands has no half-made move: its spring or its motor has brought it to the nearest stop.
    if (way === 0) {
      valves.at[m] = from;
      continue;
    }
    valves.at[m]! += speed(mover.positions.length, way, strokes) * seconds;
    if ((from + way - valves.at[m]!) * way > THERE) continue;
    valves.at[m] = from + way;
    valves.place += way * mover.stride;
  }
}
