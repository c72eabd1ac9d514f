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
  /** From where it stops to the node that stays dead. */
  readonly route: readonly number[];
  /** The open contact next to the first node, or undefined when a wire is missing at it. */
  readonly contact: number | undefined;
}

interface Hop {
  readonly to: number;
  readonly price: number;
  /** The contact crossed, from its outlet back to its feed; -1 for a wire or a contact crossed the other way. */
  readonly feeds: number;
  readonly contact: number;
}

/** Prices of a route, so that the likeliest wins: fewest open contacts, crossed from outlet to feed. */
const STEP = 1;
const NOT_WIRED = 500;
const OPEN = 1000;
const BACKWARDS = 2000;
const UNLIKELY = 3000;

function hopsBack(
  system: System,
  wires: readonly Wire[],
  config: Config,
  unlikely: ReadonlySet<number>,
): Hop[][] {
  const hops: Hop[][] = wireJoints(system, wires).map((nodes) =>
    nodes.map((to) => ({ to, price: STEP, feeds: -1, contact: -1 })),
  );
  const closed = closedContacts(system, config);
  system.contacts.forEach(({ a, b, part }, contact) => {
    const price = STEP + (closed[contact] ? 0 : unlikely.has(part) ? UNLIKELY : OPEN);
    hops[b]!.push({ to: a, price, feeds: contact, contact });
    hops[a]!.push({ to: b, price: price + BACKWARDS, feeds: -1, contact });
  });
  return hops;
}

/**
 * Looks back from a dead node through wires and contacts, open ones too, for a node joined to the pole. A feed that
 * no wire reaches is where it stops as well. Contacts of parts in `unlikely` are believed last.
 */
export function whereItStops(
  system: System,
  wires: readonly Wire[],
  config: Config,
  target: number,
  joined: readonly boolean[],
  unlikely: ReadonlySet<number> = new Set(),
): Break {
  const hops = hopsBack(system, wires, config, unlikely);
  const wired = wireJoints(system, wires).map((nodes) => nodes.length > 0);
  const cost = system.nodes.map(() => Number.POSITIVE_INFINITY);
  const towards = new Map<number, Hop & { readonly from: number }>();
  const waiting = new Set([target]);
  cost[target] = 0;
  let unwired = -1;
  while (waiting.size > 0) {
    let node = -1;
    for (const candidate of waiting) if (node < 0 || cost[candidate]! < cost[node]!) node = candidate;
    waiting.delete(node);
    if (unwired >= 0 && cost[node]! > cost[unwired]! + NOT_WIRED) break;
    const came = towards.get(node);
    if (joined[node]) return { route: back(node), contact: came?.contact };
    if (unwired < 0 && came && came.feeds >= 0 && node < system.terminals && !wired[node]) unwired = node;
    for (const hop of hops[node]!) {
      const price = cost[node]! + hop.price;
      if (price >= cost[hop.to]!) continue;
      cost[hop.to] = price;
      towards.set(hop.to, { ...hop, from: node });
      waiting.add(hop.to);
    }
  }
  return { route: unwired >= 0 ? back(unwired) : [target], contact: undefined };

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
