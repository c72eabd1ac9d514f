import type { Columns } from './columns.ts';
import type { Graph } from './graph.ts';

/** Rows from the top, one for each run of contacts and loads that follow each other; and the rows each net spans. */
export interface Rows {
  /** Row of each edge. */
  readonly row: readonly number[];
  readonly count: number;
}

/** First and last row of a net by the rows of the edges that meet it. */
export function spansOf({ nodes, edges }: Graph, row: readonly number[]): (readonly [number, number])[] {
  const spans: [number, number][] = nodes.map(() => [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]);
  edges.forEach(({ from, to }, k) => {
    for (const net of [from, to]) {
      const span = spans[net]!;
      span[0] = Math.min(span[0], row[k]!);
      span[1] = Math.max(span[1], row[k]!);
    }
  });
  return spans;
}

/** Follows the current from each root, depth first: the first way on stays in its row, every other opens a new one. */
function chains({ edges, order, bare, neutrals, poles }: Graph): Rows {
  const row = edges.map(() => -1);
  let count = 0;
  const entered = new Set<number>();
  /** Contacts before loads, dead ends last. */
  const rank = (k: number): number => {
    const { what, to, from } = edges[k]!;
    if (to === from) return 3;
    return what === 'load' ? 1 : bare.has(to) ? 2 : 0;
  };
  const enter = (net: number, at: number | undefined): void => {
    if (entered.has(net)) return;
    entered.add(net);
    const out = edges.flatMap(({ from }, k) => (from === net && row[k] === -1 ? [k] : []));
    out.sort((p, q) => rank(p) - rank(q) || p - q);
    let here = at;
    for (const k of out) {
      const { to } = edges[k]!;
      row[k] = here ?? count++;
      here = undefined;
      if (to !== net) enter(to, row[k]);
    }
  };
  for (const net of order) if (!neutrals.has(net) && !poles.has(net)) enter(net, undefined);
  for (const net of order) enter(net, undefined);
  return { row, count };
}

/** How hard the drawing is to follow: crossings of rows with uprights in the channels between, then wire. */
function makePrice(graph: Graph, { channel }: Columns, chain: readonly number[]) {
  const between = graph.edges.map(({ from, to }) =>
    graph.order.filter((net) => channel[net]! > channel[from]! && channel[net]! < channel[to]!),
  );
  return (at: readonly number[]): number => {
    const spans = spansOf(
      graph,
      chain.map((c) => at[c]!),
    );
    let price = 0;
    between.forEach((nets, k) => {
      const here = at[chain[k]!]!;
      for (const net of nets) if (spans[net]![0] < here && here < spans[net]![1]) price += 1;
    });
    for (const net of graph.order) price += 0.02 * (spans[net]![1] - spans[net]![0]);
    return price;
  };
}

/** Most times that the whole list of rows is gone through for a better place. */
const SWEEPS = 6;

/** Rows of all edges, put in an order with few crossings; the supply stays at the top. */
export function rowsOf(graph: Graph, columns: Columns): Rows {
  const { row: chain, count } = chains(graph);
  const price = makePrice(graph, columns, chain);
  let rows = Array.from({ length: count }, (_, k) => k);
  const placesOf = (list: readonly number[]): number[] => {
    const at: number[] = [];
    list.forEach((c, k) => {
      at[c] = k;
    });
    return at;
  };
  let best = price(placesOf(rows));
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const before = best;
    for (let c = 1; c < count; c++) {
      const without = rows.filter((other) => other !== c);
      for (let k = 1; k <= without.length; k++) {
        const tried = [...without.slice(0, k), c, ...without.slice(k)];
        const cost = price(placesOf(tried));
        if (cost < best - 1e-9) [best, rows] = [cost, tried];
      }
    }
    if (best >= before - 1e-9) break;
  }
  const at = placesOf(rows);
  return { row: chain.map((c) => at[c]!), count };
}
