import { chooseSlots, fanLeads, straighten } from './columns.ts';
import { findClashes, orderTrunks, packLanes, weighUp } from './order.ts';
import { isLink, isStraight, type Run, type Trunk, tidy } from './run.ts';
import { type BoardShape, CLEARANCE, type Pin, type Point } from './shape.ts';
import { breakCircles, makeTrunks } from './trunks.ts';

export interface Channel {
  height: number;
  /** Each run's line from its first tap to its second; y = 0 at the leads, `height` at the strip. */
  lines: Map<string, Point[]>;
}

/** Room between the leads and the first lane, and between the last lane and the strip, px. */
const LEAD_PAD = 20;
const STRIP_PAD = 13;

/** The heights a channel may take, px. */
export interface Limits {
  min: number;
  max?: number | undefined;
}

/** How high the channel is and where its lanes lie, for `count` lanes of which `links` hug the strip. */
export function layLanes(
  count: number,
  links: number,
  pitch: number,
  { min, max = Infinity }: Limits,
): { height: number; ys: number[] } {
  const pads = LEAD_PAD + STRIP_PAD;
  const gaps = Math.max(0, count - 1);
  const wanted = Math.max(min, pads + gaps * pitch);
  const step = wanted > max && gaps > 0 ? Math.max(CLEARANCE, (max - pads) / gaps) : pitch;
  const height = Math.max(min, pads + gaps * step);
  // Spare height opens the lanes up by half as much again, then goes to both sides.
  const open = gaps > 0 ? Math.min((height - pads) / gaps, Math.max(step, pitch * 1.5)) : 0;
  const spare = count > links ? (height - pads - gaps * open) / 2 : 0;
  const ys = Array.from(
    { length: count },
    (_, i) => height - STRIP_PAD - (count - 1 - i) * open - (i < count - links ? spare : 0),
  );
  return { height, ys };
}

/** How many of the last lanes hold only links. */
function linkLanes(trunks: Trunk[], lanes: number[], count: number): number {
  const others = lanes.filter((_, i) => (trunks[i] as Trunk).ups.length > 0);
  return count - 1 - Math.max(-1, ...others);
}

function drawRun(
  run: Run,
  height: number,
  laneOf: (run: Run, part: Trunk['part']) => number,
  jog?: number,
): Point[] {
  const reach = (at: number): Point[] => {
    const tap = run.taps[at] as Run['taps'][0];
    const edge = tap.edge === 'lead' ? 0 : height;
    const points: Point[] = [
      [tap.home, edge],
      [tap.x, edge],
    ];
    // A lead's wires leave from its centre; a terminal's have a slot each.
    if (tap.edge === 'strip') points.shift();
    if (isStraight(run)) return points;
    const part = jog === undefined ? 'whole' : tap.edge === 'lead' ? 'first' : 'second';
    const y = laneOf(run, part);
    points.push([tap.x, y]);
    if (jog !== undefined) points.push([jog, y]);
    return points;
  };
  return tidy([...reach(0), ...reach(1).reverse()]);
}

/**
 * Routes the runs of one channel; chooses their columns as it goes (sets `tap.x`).
 * `runs` must be sorted by key, each key once.
 */
export function routeChannel(runs: Run[], pins: Pin[], shape: BoardShape, limits: Limits): Channel {
  fanLeads(runs, pins, shape.slot);
  chooseSlots(runs, shape.strip, shape.slot);
  straighten(runs);
  const places = shape.strip.map(({ id }) => id);
  const snug = (run: Run): boolean =>
    isLink(run) && Math.abs(places.indexOf(run.taps[0].id) - places.indexOf(run.taps[1].id)) === 1;
  const straights = runs.filter(isStraight).map((run) => run.taps[0].x);
  const trunks = breakCircles(makeTrunks(runs, snug), straights, shape.left, shape.right);
  const clashes = findClashes(trunks);
  const order = orderTrunks(weighUp(trunks), clashes);
  const { lanes, count } = packLanes(trunks, order, clashes);
  const links = linkLanes(trunks, lanes, count);
  const { height, ys } = layLanes(count, links, shape.lane, limits);
  const laneY = new Map(
    trunks.map(({ key, part }, i) => [`${part} ${key}`, ys[lanes[i] as number] as number]),
  );
  const jogs = new Map(
    trunks.filter(({ part }) => part === 'first').map(({ key, downs }) => [key, downs[0]]),
  );
  const laneOf = (run: Run, part: Trunk['part']): number => laneY.get(`${part} ${run.key}`) as number;
  const lines = runs.map((run): [string, Point[]] => [
    run.key,
    drawRun(run, height, laneOf, jogs.get(run.key)),
  ]);
  return { height, lines: new Map(lines) };
}
