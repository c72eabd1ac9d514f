import { mergeNets } from '../../engine/circuit/nets.ts';
import type { System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** A contact or a load between two nets, in the direction it is drawn: `from` is nearer to the line. */
export interface Edge {
  readonly what: 'contact' | 'load';
  /** Its number among the system's contacts or loads. */
  readonly index: number;
  readonly part: number;
  /** Its two nodes, the one drawn on the left first. */
  readonly a: number;
  readonly b: number;
  readonly from: number;
  readonly to: number;
}

/** A wired system as nets (what wires join) and the contacts and loads between them. */
export interface Graph {
  readonly netOf: (node: number) => number;
  /** Nodes of each net. */
  readonly nodes: readonly (readonly number[])[];
  readonly edges: readonly Edge[];
  /** Nets that stand on the right: neutral as wired, then the poles before a switch. */
  readonly neutrals: ReadonlySet<number>;
  readonly poles: ReadonlySet<number>;
  /** Nets that hang from a line, whatever stands open on the way. */
  readonly fed: ReadonlySet<number>;
  /** Bare terminals at which a contact ends: no wire is landed in them. */
  readonly bare: ReadonlySet<number>;
  /** Every net that an edge meets, in an order in which each edge leads to a later one. */
  readonly order: readonly number[];
}

interface Arrow {
  readonly edge: Omit<Edge, 'from' | 'to'>;
  from: number;
  to: number;
  flipped: boolean;
}

/** Turns an arrow round: both contacts and loads carry current either way. */
function flip(arrow: Arrow): void {
  [arrow.from, arrow.to] = [arrow.to, arrow.from];
  arrow.flipped = !arrow.flipped;
}

/** Nets in an order that follows the arrows from the roots, depth first; what no root reaches is left out. */
function follow(arrows: readonly Arrow[], roots: readonly number[]): number[] {
  const seen = new Set<number>();
  const done: number[] = [];
  const visit = (net: number): void => {
    if (seen.has(net)) return;
    seen.add(net);
    for (const { from, to } of [...arrows].reverse()) if (from === net) visit(to);
    done.push(net);
  };
  for (const root of [...roots].reverse()) visit(root);
  return done.reverse();
}

/** Joins what the wires join and directs every contact and load away from the line. */
export function readGraph(system: System, wires: readonly Wire[]): Graph {
  const merged = mergeNets(system, wires);
  const netOf = (node: number): number => merged.of[node]!;
  const nodes: number[][] = Array.from({ length: merged.count }, () => []);
  system.nodes.forEach((_, node) => {
    nodes[netOf(node)]!.push(node);
  });
  const lines = [...new Set(system.supplies.map(({ line }) => netOf(line)))];
  const isLine = new Set([...lines, ...system.supplies.map(({ out }) => netOf(out.line))]);
  const right = (pick: (supply: System['supply']) => number) =>
    new Set(system.supplies.map((supply) => netOf(pick(supply))).filter((net) => !isLine.has(net)));
  const neutrals = right(({ out }) => out.neutral);
  const poles = right(({ neutral }) => neutral);
  const rank = (net: number): number => (poles.has(net) ? 2 : neutrals.has(net) ? 1 : 0);

  const arrows: Arrow[] = (['contact', 'load'] as const).flatMap((what) =>
    (what === 'contact' ? system.contacts : system.loads).map(({ part, a, b }, index) => {
      const arrow = { edge: { what, index, part, a, b }, from: netOf(a), to: netOf(b), flipped: false };
      if (rank(arrow.from) > rank(arrow.to)) flip(arrow);
      return arrow;
    }),
  );
  const left = arrows.filter(({ to }) => rank(to) === 0);
  const all = [...new Set(arrows.flatMap(({ from, to }) => [from, to]))].sort((p, q) => p - q);

  // What is fed the other way round still hangs from the line: turn the arrow that leads into it.
  const mains = lines.filter((net) => all.includes(net));
  const roots = [...mains];
  let order = follow(left, roots);
  let fed = new Set(order);
  for (;;) {
    const reached = new Set(order);
    const against = left.find(({ from, to }) => reached.has(to) && !reached.has(from));
    if (against) {
      flip(against);
      if (fed.has(against.from)) fed = new Set(follow(left, mains));
    } else {
      // An island: a pair of its own, or a part that nothing feeds.
      const rest = all.filter((net) => rank(net) === 0 && !reached.has(net));
      const start = rest.find((net) => !left.some(({ to, from }) => to === net && from !== net)) ?? rest[0];
      if (start === undefined) break;
      roots.push(start);
    }
    order = follow(left, roots);
  }
  order.push(...all.filter((net) => rank(net) === 1), ...all.filter((net) => rank(net) === 2));
  const place = new Map(order.map((net, k) => [net, k]));
  for (const arrow of arrows) if (place.get(arrow.from)! > place.get(arrow.to)!) flip(arrow);
  const edges = arrows.map(({ edge, from, to, flipped }): Edge => {
    const [a, b] = flipped ? [edge.b, edge.a] : [edge.a, edge.b];
    return { ...edge, a, b, from, to };
  });
  const meets = (net: number) => edges.filter(({ from, to }) => from === net || to === net);
  const bare = new Set(
    order.filter((net) => {
      const [only, more] = nodes[net]!.length === 1 && !poles.has(net) ? meets(net) : [];
      return only !== undefined && more === undefined && only.to === net && only.from !== net;
    }),
  );
  return { netOf, nodes, edges, neutrals, poles, fed, bare, order };
}
