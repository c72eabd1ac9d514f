import { assign, NEVER } from './assign.ts';

/** A wire by the numbers of its terminals. */
export type Pair = readonly [number, number];

/** What is known of an old wiring and of the nets that are wanted; everything by number of node. */
export interface Places {
  /** The old wires, once each. */
  readonly old: readonly Pair[];
  /** Terminals of strips: what a net is joined in does not matter to it. */
  readonly ways: readonly number[];
  /** The net that a node has in the wanted wiring. For the terminal of a part it stays so. */
  readonly wanted: ArrayLike<number>;
  /** Nets that must have a way of a strip. */
  readonly needy: readonly number[];
  /** Whether a net may be joined in this way: it must be on a strip where the wanted wiring has it. */
  readonly allows: (way: number, net: number) => boolean;
}

/** The net of a way that is left over. */
export const FREE = -1;

/** A wire counts so much more than a number that stays as wanted, which only decides between equals. */
const WIRE = 1000;

/**
 * Gives every way of the strips a net, or leaves it free, so that the fewest wires are lifted and landed. Exact.
 *
 * A way that takes a net of which it holds k leads saves 2k − 1: those leads are neither lifted nor landed, and the way
 * itself has to be joined to its net. Every needy net gets a way by the Hungarian method and every other way takes
 * what it holds most of. Only old links from way to way, and old loops, make choices depend on each other; those ways
 * are tried one by one, and a branch ends when the best that it could still come to is no better than the best found.
 *
 * @returns the net of each way, in their order
 */
export function placeNets(places: Places): number[] {
  const { old, ways, wanted, needy, allows } = places;
  const count = wanted.length;
  const index = new Map(ways.map((way, k) => [way, k]));
  const component = joined(old, count);
  const loops = loopsIn(old, component);

  const held = ways.map(() => new Map<number, number>());
  const links: [number, number][] = [];
  for (const [a, b] of old) {
    const [i, j] = [index.get(a), index.get(b)];
    if (i !== undefined && j !== undefined) links.push([i, j]);
    else if (i !== undefined) held[i]!.set(wanted[b]!, (held[i]!.get(wanted[b]!) ?? 0) + 1);
    else if (j !== undefined) held[j]!.set(wanted[a]!, (held[j]!.get(wanted[a]!) ?? 0) + 1);
  }
  const cost = (k: number, net: number): number => {
    if (net === FREE) return 0;
    if (!allows(ways[k]!, net)) return NEVER;
    return WIRE * (1 - 2 * (held[k]!.get(net) ?? 0)) - (wanted[ways[k]!] === net ? 1 : 0);
  };
  const cheapest = (k: number, nets: Iterable<number>): number => {
    let best = FREE;
    for (const net of nets) if (cost(k, net) < cost(k, best)) best = net;
    return best;
  };
  const alone = ways.map((_, k) => cheapest(k, held[k]!.keys()));

  const tied = ways
    .map((_, k) => k)
    .filter((k) => links.some((link) => link.includes(k)) || loops.has(component[ways[k]!]!));
  const isWay = new Set(ways);
  const choices = tied.map((k) => {
    const near = component[ways[k]!];
    const leads = Array.from({ length: count }, (_, node) => node).filter(
      (node) => component[node] === near && !isWay.has(node),
    );
    return [...new Set([FREE, ...leads.map((node) => wanted[node]!), ...needy])].filter(
      (net) => cost(k, net) < NEVER,
    );
  });

  /** The least that the ways decided so far can come to, and the nets that make it so. */
  const settle = (decided: ReadonlyMap<number, number>) => {
    const nets = ways.map((_, k) => decided.get(k) ?? alone[k]!);
    let total = nets.reduce((sum, net, k) => sum + cost(k, net), 0);
    for (const [i, j] of links) {
      const [a, b] = [decided.get(i), decided.get(j)];
      if (a === undefined || b === undefined) total -= 2 * WIRE;
      else if (a === b) total -= a === FREE ? WIRE : 2 * WIRE;
    }
    const served = new Set(decided.values());
    const rows = needy.filter((net) => !served.has(net));
    const open = ways.map((_, k) => k).filter((k) => !decided.has(k));
    if (rows.length > open.length) return { total: NEVER, nets };
    const chosen = assign(rows.map((net) => open.map((k) => cost(k, net) - cost(k, alone[k]!))));
    chosen.columns.forEach((column, row) => {
      nets[open[column]!] = rows[row]!;
    });
    return { total: total + chosen.total, nets };
  };

  let best: { total: number; nets: number[] } = { total: NEVER, nets: [] };
  const descend = (depth: number, decided: ReadonlyMap<number, number>): void => {
    const way = tied[depth];
    if (way === undefined) {
      const { total, nets } = settle(decided);
      const exact = total + WIRE * (loops.size > 0 ? spare(places, index, nets) : 0);
      if (exact < best.total) best = { total: exact, nets };
      return;
    }
    choices[depth]!.map((net) => new Map(decided).set(way, net))
      .map((next) => ({ next, least: settle(next).total }))
      .sort((a, b) => a.least - b.least)
      .forEach(({ next, least }) => {
        if (least < best.total) descend(depth + 1, next);
      });
  };
  descend(0, new Map());
  if (best.total >= NEVER) throw new Error('the strips have too few ways for the wanted nets');
  return best.nets;
}

/** Kept wires that close a loop: they are not lifted, but they join nothing more. */
function spare({ old, wanted }: Places, index: ReadonlyMap<number, number>, nets: readonly number[]): number {
  const netOf = (node: number) => (index.has(node) ? nets[index.get(node)!]! : wanted[node]!);
  const kept = old.filter(([a, b]) => netOf(a) === netOf(b) && netOf(a) !== FREE);
  const roots = new Set(joined(kept, wanted.length));
  return kept.length - (wanted.length - roots.size);
}

/** The lowest node that each node is joined to by these wires. */
export function joined(wires: readonly Pair[], count: number): number[] {
  const parent = Array.from({ length: count }, (_, node) => node);
  const root = (node: number): number => {
    let at = node;
    while (parent[at] !== at) at = parent[at]!;
    return at;
  };
  for (const [a, b] of wires) {
    const [i, j] = [root(a), root(b)];
    parent[Math.max(i, j)] = Math.min(i, j);
  }
  return parent.map((_, node) => root(node));
}

/** Those groups of joined nodes in which some wire closes a loop. */
function loopsIn(wires: readonly Pair[], component: readonly number[]): Set<number> {
  const balance = new Map<number, number>();
  const add = (group: number, by: number) => balance.set(group, (balance.get(group) ?? 0) + by);
  for (const group of component) add(group, -1);
  for (const [a] of wires) add(component[a]!, 1);
  return new Set([...balance].filter(([, left]) => left >= 0).map(([group]) => group));
}
