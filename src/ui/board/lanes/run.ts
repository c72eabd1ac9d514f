import type { Point } from './shape.ts';

/**
 * One channel is described with its leads at y = 0 and the strip at y = height;
 * the lower channel is the same thing upside down.
 */
export type Edge = 'lead' | 'strip';

/** Where a run meets an edge of its channel. */
export interface Tap {
  edge: Edge;
  /** The lead or terminal; '' where a run passes the strip through a margin. */
  id: string;
  /** Centre of the lead or terminal, or the margin column. */
  home: number;
  /** The column the wire takes; equal to `home` until chosen. */
  x: number;
}

/** The part of a wire that lies in one channel. */
export interface Run {
  key: string;
  taps: [Tap, Tap];
}

/** A horizontal stretch in one lane, with the columns that leave it. */
export interface Trunk {
  key: string;
  lo: number;
  hi: number;
  /** Columns going to the leads. */
  ups: number[];
  /** Columns going to the strip. */
  downs: number[];
  /** A link between neighbouring terminals, which lies closest to the strip. */
  snug: boolean;
  /** For a run in two stretches: which one this is. */
  part: 'whole' | 'first' | 'second';
}

/** True where a run needs no lane. */
export const isStraight = ({ taps: [a, b] }: Run): boolean => a.edge !== b.edge && a.x === b.x;

/** True for a link: both ends on the strip. */
export const isLink = ({ taps }: Run): boolean => taps.every((tap) => tap.edge === 'strip');

/** Deterministic text order, the same on every machine. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Orders runs along one lead or terminal so that they do not cross each other on the way in.
 * Runs across the channel lie in the order of their far ends; loops on the same edge lie outside
 * those, the nearest outermost.
 */
export function sideBySide(runs: Run[], here: (run: Run) => Tap): Run[] {
  const rank = (run: Run): [number, number] => {
    const near = here(run);
    const far = run.taps[0] === near ? run.taps[1] : run.taps[0];
    if (near.edge !== far.edge) return [1, far.x];
    return [far.home < near.home ? 0 : 2, -far.home];
  };
  const ranked = runs.map((run) => ({ run, rank: rank(run) }));
  ranked.sort((a, b) => a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1] || byText(a.run.key, b.run.key));
  return ranked.map(({ run }) => run);
}

/** Drops repeated points and points in the middle of a straight line. */
export function tidy(points: Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (last && last[0] === point[0] && last[1] === point[1]) continue;
    const before = kept.at(-2);
    const inLine =
      before &&
      last &&
      ((before[0] === last[0] && last[0] === point[0]) || (before[1] === last[1] && last[1] === point[1]));
    if (inLine) kept.pop();
    kept.push(point);
  }
  return kept;
}
