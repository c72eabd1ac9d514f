/** A place in the window, px from its top left. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A terminal that a probe can be put on, and its middle. */
export interface Spot extends Point {
  readonly id: string;
}

/** A probe let go this near a terminal, px, goes on it. */
const REACH = 30;

/** The terminal that a probe let go here would go on. */
export function nearestSpot(spots: readonly Spot[], { x, y }: Point): string | undefined {
  let best: string | undefined;
  let least = REACH;
  for (const spot of spots) {
    const distance = Math.hypot(spot.x - x, spot.y - y);
    if (distance >= least) continue;
    best = spot.id;
    least = distance;
  }
  return best;
}

const WAY: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** What lies aside counts so many times what lies ahead. */
const ASIDE = 2.5;

/** Where a key leads from a terminal: the arrows to the next one that way, Home and End to the first and last. */
export function spotBy(key: string, spots: readonly Spot[], from: string): string | undefined {
  if (key === 'Home') return spots[0]?.id;
  if (key === 'End') return spots.at(-1)?.id;
  const way = WAY[key];
  const here = spots.find(({ id }) => id === from);
  if (!way || !here) return undefined;
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const { id, x, y } of spots) {
    const [right, down] = [x - here.x, y - here.y];
    const ahead = right * way.x + down * way.y;
    const far = ahead + ASIDE * Math.abs(right * way.y + down * way.x);
    if (ahead < 2 || far >= least) continue;
    best = id;
    least = far;
  }
  return best;
}
