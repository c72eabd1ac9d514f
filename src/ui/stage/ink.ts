/** A stroke of the pen. Points go from the middle of the picture, in 1366ths of its width or 768ths of its height. */
export interface Stroke {
  readonly colour: 1 | 2;
  readonly width: 1 | 2;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** How a point of the picture is kept, so that ink stays in place when the window changes its size. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Pixels to a unit. */
  readonly unit: number;
}

/** The frame of a picture of this size in CSS pixels. Letters grow with the smaller side. */
export const frameOf = (width: number, height: number): Frame => ({
  width,
  height,
  unit: Math.max(0.1, Math.min(width / 1366, height / 768)),
});

const round = (value: number): number => Math.round(value * 10) / 10;

export const toInk = ({ width, height, unit }: Frame, x: number, y: number): [number, number] => [
  round((x - width / 2) / unit),
  round((y - height / 2) / unit),
];

const toPicture = ({ width, height, unit }: Frame, [x, y]: readonly [number, number]): [number, number] => [
  round(x * unit + width / 2),
  round(y * unit + height / 2),
];

/** The stroke as an SVG path: a dot where it has one point. */
export function strokePath(frame: Frame, { points }: Stroke): string {
  const at = points.map((point) => toPicture(frame, point).join(' '));
  return at.length === 1 ? `M${at[0]}l0.01 0` : `M${at.join('L')}`;
}

/** Pen widths in units. */
export const penWidth = { 1: 5, 2: 12 } as const;

const distance = (
  x: number,
  y: number,
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
) => {
  const long = (bx - ax) ** 2 + (by - ay) ** 2;
  const t = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long));
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
};

/** Strokes that do not pass within reach of a point; both in units. */
export const eraseAt = (strokes: readonly Stroke[], x: number, y: number, reach = 14): readonly Stroke[] => {
  const left = strokes.filter(
    ({ points, width }) =>
      !points.some((point, k) => distance(x, y, points[k - 1] ?? point, point) < reach + penWidth[width] / 2),
  );
  return left.length === strokes.length ? strokes : left;
};

/** What is drawn on each slide, with everything that can be undone. A pen mark stays on its own slide. */
export interface Sheets {
  readonly [slide: number]: readonly Stroke[];
}

const isStroke = (value: unknown): value is Stroke => {
  const { colour, width, points } = (value ?? {}) as Partial<Stroke>;
  return (
    (colour === 1 || colour === 2) &&
    (width === 1 || width === 2) &&
    Array.isArray(points) &&
    points.length > 0 &&
    points.every((point) => Array.isArray(point) && point.length === 2 && point.every(Number.isFinite))
  );
};

/** Ink out of what the device kept: whatever is not ink is left out. */
export function readSheets(kept: string | null): Sheets {
  try {
    const data: unknown = JSON.parse(kept ?? '{}');
    const pairs = Object.entries(data as Record<string, unknown>).filter(
      ([slide, strokes]) => /^\d{1,4}$/.test(slide) && Array.isArray(strokes) && strokes.every(isStroke),
    );
    return Object.fromEntries(pairs) as Sheets;
  } catch {
    return {};
  }
}
