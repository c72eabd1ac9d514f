import type { Columns } from './columns.ts';
import type { Graph } from './graph.ts';
import { spansOf } from './rows.ts';

/** Lanes of each channel from the left: the nets that share one stand below each other in it. */
export type Lanes = readonly (readonly (readonly number[])[])[];

/** Packs the uprights of each channel into few lanes, then orders the lanes so that few rows cross an upright. */
export function lanesOf(graph: Graph, { channel, channels }: Columns, row: readonly number[]): Lanes {
  const spans = spansOf(graph, row);
  return Array.from({ length: channels }, (_, c) => {
    const nets = graph.order.filter((net) => channel[net] === c && !graph.bare.has(net));
    nets.sort((p, q) => spans[p]![0] - spans[q]![0] || p - q);
    const lanes: number[][] = [];
    for (const net of nets) {
      const free = lanes.find((lane) => spans[lane.at(-1)!]![1] < spans[net]![0]);
      if (free) free.push(net);
      else lanes.push([net]);
    }
    const covers = (lane: readonly number[], at: number): number =>
      lane.filter((net) => spans[net]![0] < at && at < spans[net]![1]).length;
    /** Crossings between two lanes of one channel, the first standing on the left. */
    const between = (left: readonly number[], right: readonly number[]): number => {
      let sum = 0;
      graph.edges.forEach(({ from, to }, k) => {
        if (from !== to && left.includes(from)) sum += covers(right, row[k]!);
        if (from !== to && right.includes(to)) sum += covers(left, row[k]!);
      });
      return sum;
    };
    const cost = (list: readonly (readonly number[])[]): number =>
      list.reduce(
        (sum, lane, k) => sum + list.slice(k + 1).reduce((s, other) => s + between(lane, other), 0),
        0,
      );
    let best = lanes;
    for (let moved = true; moved; ) {
      moved = false;
      for (let k = 0; k < best.length; k++) {
        const rest = best.filter((_, j) => j !== k);
        for (let j = 0; j <= rest.length; j++) {
          const tried = [...rest.slice(0, j), best[k]!, ...rest.slice(j)];
          if (cost(tried) < cost(best)) [best, moved] = [tried, true];
        }
      }
    }
    return best;
  });
}
