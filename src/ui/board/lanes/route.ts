import { type Channel, routeChannel } from './channel.ts';
import { findCrossings } from './crossings.ts';
import { byText, tidy } from './run.ts';
import { shareOut } from './runs.ts';
import type { BoardShape, Point, Routing, Wire } from './shape.ts';

export type {
  BoardShape,
  Crossing,
  Pin,
  RoutedWire,
  Routing,
  StripTerminal,
  Wire,
} from './shape.ts';

/**
 * Routes wires between leads and terminals so that each can be followed by eye.
 *
 * All lengths px; y = 0 at the upper leads, the strip's top edge at `upperHeight`, the lower leads
 * at `upperHeight + stripHeight + lowerHeight`. The same wires give the same routing in any order.
 * Wires keep 5 px apart while no lead has more than six wires, no side of a box more than
 * (width − 10) / 5 + 1 and no margin more than its width holds; beyond that they draw closer.
 *
 * Throws RangeError for a wire with an unknown end, or with both ends in one place.
 */
export function route(shape: BoardShape, wires: Wire[]): Routing {
  const runs = shareOut(shape, wires);
  const upper = routeChannel(runs.upper, shape.upper, shape, {
    min: shape.minUpper,
    max: shape.maxUpper,
  });
  const lower = routeChannel(runs.lower, shape.lower, shape, {
    min: shape.minLower,
    max: shape.maxLower,
  });
  const bottom = upper.height + shape.stripHeight + lower.height;
  const isUpper = new Set(shape.upper.map(({ id }) => id));
  const turned = (channel: Channel, key: string): Point[] | undefined =>
    channel.lines.get(key)?.map(([x, y]): Point => [x, bottom - y]);
  const routed = [...wires]
    .sort((a, b) => byText(a.key, b.key))
    .map(({ key, ends }) => {
      const above = upper.lines.get(key);
      const below = turned(lower, key);
      if (!above || !below) return { key, points: (above ?? below) as Point[] };
      const points = tidy([...above, ...below.reverse()]);
      return { key, points: isUpper.has(ends[0]) ? points : points.reverse() };
    });
  return {
    wires: routed,
    upperHeight: upper.height,
    lowerHeight: lower.height,
    crossings: findCrossings(routed),
  };
}
