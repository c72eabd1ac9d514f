import type { Trunk } from './run.ts';
import { END_GAP } from './shape.ts';
import { mustLieAbove } from './trunks.ts';

const HARD = 1e4;
/** One lane less is worth this many crossings more. */
const LANE = 1.2;

const within = (xs: number[], { lo, hi }: Trunk): number =>
  xs.reduce((count, x) => count + (x > lo && x < hi ? 1 : 0), 0);

/** Crossings made if `a` lies nearer the leads than `b`; loops lean towards their own edge. */
function costAbove(a: Trunk, b: Trunk): number {
  const crossings = within(a.downs, b) + within(b.ups, a);
  const lean = a.ups.length === 0 || b.downs.length === 0 ? 0.5 : 0;
  return crossings + lean + (mustLieAbove(b, a) ? HARD : 0);
}

/** What is gained by trunk `a` above `b` rather than below it: `gains[a][b]`. */
export type Gains = number[][];

export function weighUp(trunks: Trunk[]): Gains {
  return trunks.map((a) => trunks.map((b) => costAbove(b, a) - costAbove(a, b)));
}

const at = (gains: Gains, a: number, b: number): number => (gains[a] as number[])[b] as number;

/** A first order: the trunk that gains most by lying above all the rest comes next. */
function greedy(gains: Gains): number[] {
  const rest = gains.map((_, i) => i);
  const order: number[] = [];
  while (rest.length > 0) {
    let best = 0;
    let most = -Infinity;
    rest.forEach((a, i) => {
      // Only a trunk that nothing left must lie above may come next.
      const total = rest.reduce((sum, b) => {
        const gain = at(gains, a, b);
        return sum + (gain < -HARD / 2 ? -HARD * HARD : Math.min(gain, HARD / 2));
      }, 0);
      if (total > most) [best, most] = [i, total];
    });
    order.push(...rest.splice(best, 1));
  }
  return order;
}

/** Every other place trunk `a` could take in the order, with what it would gain there. */
function moves(order: number[], a: number, gains: Gains): { to: number; gain: number }[] {
  const from = order.indexOf(a);
  const found: { to: number; gain: number }[] = [];
  for (let to = from - 1, gain = 0; to >= 0; to--) {
    gain += at(gains, a, order[to] as number);
    found.push({ to, gain });
  }
  for (let to = from + 1, gain = 0; to < order.length; to++) {
    gain -= at(gains, a, order[to] as number);
    found.push({ to, gain });
  }
  return found;
}

function moved(order: number[], a: number, to: number): number[] {
  const next = order.filter((b) => b !== a);
  next.splice(to, 0, a);
  return next;
}

/** Pairs of trunks that cannot lie in one lane. */
export function findClashes(trunks: Trunk[]): boolean[][] {
  const clash = (a: Trunk, b: Trunk): boolean =>
    (a.lo - END_GAP < b.hi && b.lo - END_GAP < a.hi) || mustLieAbove(a, b) || mustLieAbove(b, a);
  return trunks.map((a) => trunks.map((b) => clash(a, b)));
}

/** A lane for each trunk, 0 nearest the leads, as near the leads as the order allows. */
export function stack(order: number[], clashes: boolean[][]): number[] {
  const lanes = order.map(() => 0);
  order.forEach((a, place) => {
    const row = clashes[a] as boolean[];
    let lane = 0;
    for (let p = 0; p < place; p++) {
      const b = order[p] as number;
      if (row[b] && (lanes[b] as number) >= lane) lane = (lanes[b] as number) + 1;
    }
    lanes[a] = lane;
  });
  return lanes;
}

/**
 * Puts trunks in order from the leads to the strip, with few crossings and few lanes:
 * a greedy start, then each trunk moves to its best place until nothing improves. Returns indices.
 */
export function orderTrunks(gains: Gains, clashes: boolean[][]): number[] {
  let order = greedy(gains);
  /** Lanes needed; the sum breaks ties, so that a step on the way to fewer lanes counts too. */
  const bulk = (some: number[]): number => {
    const lanes = stack(some, clashes);
    return Math.max(...lanes) * LANE + lanes.reduce((sum, lane) => sum + lane, 0) * 1e-3;
  };
  for (const wide of [false, true]) {
    for (let sweep = 0, better = true; better && sweep < (wide ? 3 : 8); sweep++) {
      better = false;
      for (const a of [...order]) {
        const now = wide ? bulk(order) : 0;
        let best: number[] | undefined;
        let most = 1e-9;
        for (const { to, gain } of moves(order, a, gains)) {
          if (gain < (wide ? -LANE : most)) continue;
          const next = moved(order, a, to);
          const total = wide ? gain + now - bulk(next) : gain;
          if (total > most) [best, most] = [next, total];
        }
        if (!best) continue;
        order = best;
        better = true;
      }
    }
  }
  return order;
}

/** Lanes for ordered trunks; loops on the strip then drop to the lane nearest it. */
export function packLanes(
  trunks: Trunk[],
  order: number[],
  clashes: boolean[][],
): { lanes: number[]; count: number } {
  const lanes = stack(order, clashes);
  const count = Math.max(-1, ...lanes) + 1;
  for (let place = order.length - 1; place >= 0; place--) {
    const a = order[place] as number;
    if ((trunks[a] as Trunk).ups.length > 0) continue;
    const below = order.slice(place + 1).filter((b) => (clashes[a] as boolean[])[b]);
    lanes[a] = Math.min(count - 1, ...below.map((b) => (lanes[b] as number) - 1));
  }
  return { lanes, count };
}
