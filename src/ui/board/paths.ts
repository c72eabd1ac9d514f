import type { RoutedWire, Routing } from './lanes/route.ts';

const round = (value: number): number => Math.round(value * 10) / 10;

/**
 * A routed wire as an SVG path with rounded corners of `radius` px, broken by a gap of `gap` px either side where it
 * passes under another wire.
 */
export function pathOf(wire: RoutedWire, crossings: Routing['crossings'], radius = 5, gap = 3.3): string {
  const under = crossings.filter((crossing) => crossing.under === wire.key);
  const { points } = wire;
  const [first] = points;
  if (!first) return '';
  let path = `M${round(first[0])} ${round(first[1])}`;
  for (let k = 1; k < points.length; k++) {
    const [px, py] = points[k - 1]!;
    const [x, y] = points[k]!;
    if (x === px) {
      const down = Math.sign(y - py);
      const inRun = under
        .filter((c) => Math.abs(c.x - x) < 0.01 && (c.y - py) * down > 0 && (y - c.y) * down > 0)
        .sort((a, b) => (a.y - b.y) * down);
      for (const c of inRun)
        path += `L${round(x)} ${round(c.y - gap * down)}M${round(x)} ${round(c.y + gap * down)}`;
    }
    const next = points[k + 1];
    if (!next) {
      path += `L${round(x)} ${round(y)}`;
      continue;
    }
    const before = Math.hypot(x - px, y - py);
    const after = Math.hypot(next[0] - x, next[1] - y);
    const r = Math.min(radius, before / 2, after / 2);
    const [ux, uy] = before ? [(x - px) / before, (y - py) / before] : [0, 0];
    const [vx, vy] = after ? [(next[0] - x) / after, (next[1] - y) / after] : [0, 0];
    path += `L${round(x - ux * r)} ${round(y - uy * r)}Q${round(x)} ${round(y)} ${round(x + vx * r)} ${round(y + vy * r)}`;
  }
  return path;
}
