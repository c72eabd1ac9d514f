import { type ScaleBand, type ScaleLinear, scaleBand, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Forecast } from '../../course/progress/forecast.ts';

const DAY = 86_400_000;
const LEFT = 50;
const TOP = 14;
const RECALL = 120;
const GAP = 44;
const REVIEWS = 90;
const FOOT = 26;

/** The forecast drawn: chances of recall above, reviews below, on the same days. */
export interface Ahead {
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly recallFoot: number;
  readonly reviewsTop: number;
  readonly foot: number;
  readonly chances: readonly { readonly y: number; readonly says: string }[];
  readonly counts: readonly { readonly y: number; readonly says: string }[];
  readonly days: readonly {
    readonly x: number;
    readonly says: string;
    readonly anchor: 'start' | 'middle' | 'end';
  }[];
  readonly bars: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
  readonly revised: string;
  readonly unrevised: string;
  readonly endOf: (share: number) => number;
  /** Days that one bar stands for. */
  readonly step: number;
}

const dayMonth = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });

/**
 * Lays the forecast out.
 * @param width in CSS pixels
 * @param now milliseconds since 1970
 */
export function layAhead({ reviews, recall }: Forecast, now: number, width: number): Ahead {
  const right = width - 12;
  const recallFoot = TOP + RECALL;
  const reviewsTop = recallFoot + GAP;
  const foot = reviewsTop + REVIEWS;
  const length = Math.max(1, reviews.length);
  // Bars that a finger could still tell apart: days, or whole weeks.
  const step = (right - LEFT) / length < 5 ? 7 : 1;
  const sums = Array.from({ length: Math.ceil(length / step) }, (_, k) =>
    reviews.slice(k * step, (k + 1) * step).reduce((sum, count) => sum + count, 0),
  );
  const x: ScaleLinear<number, number> = scaleLinear([0, length], [LEFT, right]);
  const band: ScaleBand<number> = scaleBand<number>()
    .domain(sums.map((_, k) => k))
    .range([LEFT, x(sums.length * step)])
    .paddingInner(0.2);
  const chance = scaleLinear([0, 1], [recallFoot, TOP]);
  const count = scaleLinear([0, Math.max(4, ...sums)], [foot, reviewsTop]).nice(4);
  const path = (key: 'revised' | 'unrevised') =>
    line<number>(
      (_, day) => x(Math.min(day, length)),
      (share) => chance(share),
    )((recall?.byDay ?? []).map((day) => day[key])) ?? '';
  const ticks = width < 500 ? 2 : 4;
  return {
    height: foot + FOOT,
    left: LEFT,
    right,
    top: TOP,
    recallFoot,
    reviewsTop,
    foot,
    step,
    chances: [0, 0.5, 1].map((share) => ({ y: chance(share), says: `${share * 100} %` })),
    counts: count
      .ticks(3)
      .filter(Number.isInteger)
      .map((value) => ({ y: count(value), says: String(value) })),
    days: Array.from({ length: ticks + 1 }, (_, k) => {
      const day = Math.round((length * k) / ticks);
      const anchor = k === 0 ? 'start' : k === ticks ? 'end' : 'middle';
      return { x: x(day), says: k === 0 ? 'today' : dayMonth.format(now + day * DAY), anchor };
    }),
    bars: sums.map((sum, k) => ({
      x: band(k) ?? LEFT,
      y: count(sum),
      // The last week may be cut short.
      width: Math.min(band.bandwidth(), 40, right - (band(k) ?? LEFT)),
      height: foot - count(sum),
    })),
    revised: path('revised'),
    unrevised: path('unrevised'),
    endOf: (share) => chance(share),
  };
}
