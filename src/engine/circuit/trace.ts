import { type Config, partOf, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { closedContacts, jointsIn, wireJoints } from './plain.ts';

/** Nodes on the shortest joined route between two nodes in a configuration, both included; undefined when not joined. */
export function routeBetween(
  system: System,
  wires: readonly Wire[],
  config: Config,
  from: number,
  to: number,
): number[] | undefined {
  const joints = jointsIn(system, wires, config);
  const before = new Map<number, number>([[from, -1]]);
  for (const node of before.keys()) {
    if (node === to) break;
    for (const next of joints[node]!) if (!before.has(next)) before.set(next, node);
  }
  if (!before.has(to)) return undefined;
  const route: number[] = [];
  for (let node = to; node >= 0; node = before.get(node)!) route.unshift(node);
  return route;
}

/** Where a supply that should reach a node stops. */
export interface Break {
  /** From the last node joined to the pole to the node that stays dead; only the dead node when no contact could mend it. */
  readonly route: readonly number[];
  /** The open contact next to the last joined node, or undefined when a wire is missing. */
  readonly contact: number | undefined;
}

/**
 * Looks back from a dead node through wires and contacts, open ones too, for the pole (line unless told). Of all
 * routes the one through fewest open contacts; contacts of parts named in `unlikely` count for more.
 */
export function whereItStops(
  system: System,
  wires: readonly Wire[],
  config: Config,
  target: number,
  joined: readonly boolean[],
  unlikely: ReadonlySet<number> = new Set(),
): Break {
  interface Hop {
    readonly to: number;
    readonly price: number;
    readonly contact: number;
  }
  const hops: Hop[][] = wireJoints(system, wires).map((nodes) =>
    nodes.map((to) => ({ to, price: 1, contact: -1 })),
  );
  const closed = closedContacts(system, config);
  system.contacts.forEach(({ a, b, part }, contact) => {
    const price = closed[contact] ? 1 : unlikely.has(part) ? 3000 : 1000;
    hops[a]!.push({ to: b, price, contact });
    hops[b]!.push({ to: a, price, contact });
  });

  const cost = system.nodes.map(() => Number.POSITIVE_INFINITY);
  const towards = new Map<number, Hop & { readonly from: number }>();
  const waiting = new Set([target]);
  cost[target] = 0;
  while (waiting.size > 0) {
    let node = -1;
    for (const candidate of waiting) if (node < 0 || cost[candidate]! < cost[node]!) node = candidate;
    waiting.delete(node);
    if (joined[node]) return { route: back(node), contact: towards.get(node)!.contact };
    for (const hop of hops[node]!) {
      const price = cost[node]! + hop.price;
      if (price >= cost[hop.to]!) continue;
      cost[hop.to] = price;
      towards.set(hop.to, { ...hop, from: node });
      waiting.add(hop.to);
    }
  }
  return { route: [target], contact: undefined };

  function back(start: number): number[] {
    const route = [start];
    for (let hop = towards.get(start); hop; hop = towards.get(hop.from)) route.push(hop.from);
    return route;
  }
}

/** The terminals of a route, by name: what a learner can put a finger on. */
export const terminalsOf = (system: System, route: readonly number[]): string[] =>
  route.filter((node) => node < system.terminals).map((node) => system.nodes[node]!);

/** Names of the parts a route goes through, each once, in order. */
export const partsOn = (system: System, route: readonly number[]): string[] => [
  ...new Set(route.map((node) => partOf(system, node).id)),
];
