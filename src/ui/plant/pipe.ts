import type { Point, Run } from './layout.ts';

const length = ([ax, ay]: Point, [bx, by]: Point): number => Math.abs(bx - ax) + Math.abs(by - ay);

/** The path of a pipe for an SVG `d`, its bends rounded to `radius`. */
export function pathOf(points: readonly Point[], radius = 7): string {
  const bits = points.map((point, k) => {
    const before = points[k - 1];
    const after = points[k + 1];
    if (!before) return `M${point}`;
    if (!after) return `L${point}`;
    const r = Math.min(radius, length(before, point) / 2, length(point, after) / 2);
    return `L${towards(point, before, r)}Q${point} ${towards(point, after, r)}`;
  });
  return bits.join('');
}

function towards([x, y]: Point, [tx, ty]: Point, by: number): Point {
  return [x + Math.sign(tx - x) * by, y + Math.sign(ty - y) * by];
}

/** Where an arrowhead goes on a pipe: the middle of its longest straight, and its turn in degrees. */
export function arrowOn({ points }: Run): { x: number; y: number; turn: number } | undefined {
  let best: { x: number; y: number; turn: number } | undefined;
  let longest = 17;
  points.forEach((to, k) => {
    const from = points[k - 1];
    if (!from || length(from, to) <= longest) return;
    longest = length(from, to);
    const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    best = { x: (from[0] + to[0]) / 2, y: (from[1] + to[1]) / 2, turn };
  });
  return best;
}
