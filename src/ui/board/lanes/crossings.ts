import { byText } from './run.ts';
import type { Crossing, RoutedWire } from './shape.ts';

interface Stretch {
  key: string;
  /** The x of an upright, the y of a level stretch. */
  at: number;
  lo: number;
  hi: number;
}

function stretches(wires: RoutedWire[], upright: boolean): Stretch[] {
  const along = upright ? 1 : 0;
  const across = upright ? 0 : 1;
  return wires.flatMap(({ key, points }) =>
    points.slice(1).flatMap((to, i) => {
      const from = points[i] as [number, number];
      if (from[across] !== to[across] || from[along] === to[along]) return [];
      const [lo, hi] = [Math.min(from[along], to[along]), Math.max(from[along], to[along])];
      return [{ key, at: to[across], lo, hi }];
    }),
  );
}

/**
 * Every place where two wires cross at right angles, top to bottom.
 * The upright wire is the one with the gap: it is shorter, so the eye picks it up again.
 */
export function findCrossings(wires: RoutedWire[]): Crossing[] {
  const uprights = stretches(wires, true);
  const found = stretches(wires, false).flatMap((level) =>
    uprights
      .filter(
        (upright) =>
          upright.key !== level.key &&
          upright.at > level.lo &&
          upright.at < level.hi &&
          level.at > upright.lo &&
          level.at < upright.hi,
      )
      .map((upright) => ({ x: upright.at, y: level.at, over: level.key, under: upright.key })),
  );
  return found.sort((a, b) => a.y - b.y || a.x - b.x || byText(a.over, b.over));
}
