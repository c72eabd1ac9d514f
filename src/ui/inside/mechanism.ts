/** Drawings of moving parts, in drawing units. Angles in degrees, clockwise from the right. */

export type Point = readonly [x: number, y: number];

export const around = ([x, y]: Point, radius: number, degrees: number): Point => {
  const turn = (degrees * Math.PI) / 180;
  return [Number((x + radius * Math.cos(turn)).toFixed(1)), Number((y + radius * Math.sin(turn)).toFixed(1))];
};

/** A coil spring between two points, with straight ends: it has the same turns however far it is stretched. */
export function springPath([x1, y1]: Point, [x2, y2]: Point, turns = 7, width = 6): string {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const at = (along: number, off: number) =>
    `${(x1 + ux * along - uy * off).toFixed(1)} ${(y1 + uy * along + ux * off).toFixed(1)}`;
  const lead = 7;
  const pitch = (length - 2 * lead) / (2 * turns);
  const zigzag = Array.from({ length: 2 * turns }, (_, k) =>
    at(lead + pitch * (k + 0.5), k % 2 === 0 ? width : -width),
  );
  return `M${at(0, 0)}L${[at(lead, 0), ...zigzag, at(length - lead, 0), at(length, 0)].join('L')}`;
}

/** A toothed sector about a pivot, from one angle to another. */
export function sectorPath(pivot: Point, radius: number, from: number, to: number, teeth: number): string {
  const step = (to - from) / teeth;
  const edge = Array.from({ length: teeth }, (_, k) => {
    const start = from + k * step;
    return [
      around(pivot, radius - 4, start),
      around(pivot, radius, start + step * 0.25),
      around(pivot, radius, start + step * 0.6),
      around(pivot, radius - 4, start + step * 0.85),
    ];
  }).flat();
  return `M${[around(pivot, 13, from), ...edge, around(pivot, radius - 4, to), around(pivot, 13, to)].map(([x, y]) => `${x} ${y}`).join('L')}Z`;
}

/** A pinion: a toothed wheel, turned by so many degrees. */
export const wheelPath = (centre: Point, radius: number, teeth: number, turned: number): string =>
  `M${Array.from({ length: teeth * 2 }, (_, k) => around(centre, k % 2 === 0 ? radius : radius - 3.4, turned + (k * 180) / teeth).join(' ')).join('L')}Z`;
