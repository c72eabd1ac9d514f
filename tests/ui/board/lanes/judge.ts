import type { BoardShape, RoutedWire, Routing, Wire } from '../../../../src/ui/board/lanes/route.ts';

type Point = [number, number];
interface Stretch {
  key: string;
  a: Point;
  b: Point;
}

export const stretches = ({ key, points }: RoutedWire): Stretch[] =>
  points.slice(1).map((b, i) => ({ key, a: points[i] as Point, b }));

/** True where two stretches run side by side closer than `gap` px, away from their leads. */
function together(s: Stretch, t: Stretch, gap: number, leads: Point[]): boolean {
  for (const along of [0, 1] as const) {
    const across = along === 0 ? 1 : 0;
    if (s.a[across] !== s.b[across] || t.a[across] !== t.b[across]) continue;
    if (Math.abs(s.a[across] - t.a[across]) >= gap) continue;
    const lo = Math.max(Math.min(s.a[along], s.b[along]), Math.min(t.a[along], t.b[along]));
    const hi = Math.min(Math.max(s.a[along], s.b[along]), Math.max(t.a[along], t.b[along]));
    const ends = [lo, hi].map((v): Point => (along === 0 ? [v, s.a[1]] : [s.a[0], v]));
    const atLead = leads.some((lead) =>
      ends.every((end) => Math.hypot(end[0] - lead[0], end[1] - lead[1]) <= 8.001),
    );
    if (hi >= lo && !atLead) return true;
  }
  return false;
}

/** True where the end of one stretch touches the side or the corner of another at right angles. */
function touch(s: Stretch, t: Stretch, leads: Point[]): boolean {
  const level = [s, t].find(({ a, b }) => a[1] === b[1]);
  const upright = [s, t].find(({ a, b }) => a[0] === b[0]);
  if (!level || !upright) return false;
  const [x, y] = [upright.a[0], level.a[1]];
  const [left, right] = [Math.min(level.a[0], level.b[0]), Math.max(level.a[0], level.b[0])];
  const [high, low] = [Math.min(upright.a[1], upright.b[1]), Math.max(upright.a[1], upright.b[1])];
  if (x < left || x > right || y < high || y > low) return false;
  const through = x > left && x < right && y > high && y < low;
  return !through && !leads.some((lead) => Math.hypot(x - lead[0], y - lead[1]) <= 8.001);
}

/** True where two level stretches in one lane come closer than 10 px end to end. */
function crowded(s: Stretch, t: Stretch, bottom: number): boolean {
  const y = s.a[1];
  if ([s.b, t.a, t.b].some((point) => point[1] !== y) || y === 0 || y === bottom) return false;
  const [a, b] = [s, t].map((one) => [one.a[0], one.b[0]].sort((p, q) => p - q)) as [Point, Point];
  return a[0] < b[1] + 10 - 1e-9 && b[0] < a[1] + 10 - 1e-9;
}

/** Everything wrong with a routing, in words; empty when it can be read. */
export function faults(shape: BoardShape, wires: Wire[], routing: Routing): string[] {
  const found: string[] = [];
  const top = routing.upperHeight;
  const foot = top + shape.stripHeight;
  const bottom = foot + routing.lowerHeight;
  const boxes = new Map(shape.strip.map((box) => [box.id, box]));
  const leads = new Map<string, Point>([
    ...shape.upper.map(({ id, x }): [string, Point] => [id, [x, 0]]),
    ...shape.lower.map(({ id, x }): [string, Point] => [id, [x, bottom]]),
  ]);
  const bandLeft = Math.min(...shape.strip.map(({ x, width }) => x - width / 2));
  const bandRight = Math.max(...shape.strip.map(({ x, width }) => x + width / 2));
  const lines = new Map(routing.wires.map((wire) => [wire.key, wire]));
  if (lines.size !== wires.length) found.push('a wire is missing');
  for (const { key, ends } of wires) {
    const wire = lines.get(key) as RoutedWire;
    for (const [id, point] of [
      [ends[0], wire.points[0]],
      [ends[1], wire.points.at(-1)],
    ] as [string, Point][]) {
      const lead = leads.get(id);
      const box = boxes.get(id);
      const meets = lead
        ? lead[1] === point[1] && Math.abs(lead[0] - point[0]) < 1e-9
        : box && Math.abs(point[0] - box.x) <= box.width / 2 && (point[1] === top || point[1] === foot);
      if (!meets) found.push(`${key} does not meet ${id}`);
    }
    for (const { a, b } of stretches(wire)) {
      if ((a[0] === b[0]) === (a[1] === b[1])) found.push(`${key} is not right-angled`);
      const [lo, hi] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
      if (lo < shape.left || hi > shape.right) found.push(`${key} leaves the board`);
      const [high, low] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
      if (high < 0 || low > bottom) found.push(`${key} runs into a part`);
      if (low > top && high < foot && hi > bandLeft && lo < bandRight)
        found.push(`${key} runs through the strip`);
    }
  }
  const leadPoints = [...leads.values()];
  const all = routing.wires.flatMap(stretches);
  all.forEach((s, i) => {
    for (const t of all.slice(i + 1)) {
      if (s.key === t.key) continue;
      const pair = `${s.key} and ${t.key}`;
      if (together(s, t, 4, leadPoints)) found.push(`${pair} run together at ${s.a} and ${t.a}`);
      if (touch(s, t, leadPoints)) found.push(`${pair} touch at ${s.a} and ${t.a}`);
      if (crowded(s, t, bottom)) found.push(`${pair} crowd one lane at ${s.a} and ${t.a}`);
    }
  });
  return found;
}

/** Lanes used: different heights at which level stretches lie, those at the leads left out. */
export function laneHeights({ wires, upperHeight, lowerHeight }: Routing, strip: number): number[] {
  const bottom = upperHeight + strip + lowerHeight;
  const ys = wires
    .flatMap(stretches)
    .filter(({ a, b }) => a[1] === b[1] && a[1] > 0 && a[1] < bottom)
    .map(({ a }) => Math.round(a[1] * 1000) / 1000);
  return [...new Set(ys)].sort((a, b) => a - b);
}
