import { mergeNets } from '../circuit/nets.ts';
import { partOf, type System } from '../model/system.ts';
import { distinctWires, type Wire, wiresByKey } from '../model/wiring.ts';
import { landings } from './landings.ts';
import { type Pair, type Places, placeNets } from './strip-places.ts';

/** How one wiring is made into another. What stays is the same wire in the same two terminals. */
export interface Change {
  readonly lift: readonly Wire[];
  readonly land: readonly Wire[];
  readonly stays: readonly Wire[];
}

/** Wires that are lifted and landed, counted together. */
export const sizeOf = ({ lift, land }: Change): number => lift.length + land.length;

/**
 * The fewest wires lifted and landed that make `from` join the same terminals of parts as `to`. Which numbers of a
 * strip do it is left open: a net of two or more leads that `to` joins on a strip is joined on a way of that strip,
 * any way. A lead that `to` joins to nothing may stay alone in its way. All wires must name terminals of the system.
 */
export function smallestChange(system: System, from: readonly Wire[], to: readonly Wire[]): Change {
  const old = distinctWires(from);
  const pairs = old.map((wire) => byNumber(system, wire));
  const places = describe(system, pairs, to);
  const chosen = new Map(placeNets(places).map((net, k) => [places.ways[k]!, net]));
  const netOf = (node: number) => chosen.get(node) ?? places.wanted[node]!;
  const isKept = ([a, b]: Pair) => netOf(a) === netOf(b);

  const stays = old.filter((_, k) => isKept(pairs[k]!));
  const wanted = distinctWires(to).map((wire) => byNumber(system, wire));
  const land = landings(places, netOf, pairs.filter(isKept), wanted).map(
    ([a, b]): Wire => [system.nodes[a]!, system.nodes[b]!],
  );
  const change = { lift: old.filter((_, k) => !isKept(pairs[k]!)), land, stays };
  if (!isSameCircuit(system, [...stays, ...land], to))
    throw new Error('the change misses the wanted circuit');
  return change;
}

/**
 * The smallest change from a wiring to any of those given, and which of them it comes to. Of equals the first counts.
 * Throws when none is given.
 */
export function nearestChange(
  system: System,
  from: readonly Wire[],
  wanted: readonly (readonly Wire[])[],
): { readonly change: Change; readonly nearest: number } {
  const [first, ...others] = wanted.map((to, nearest) => ({
    change: smallestChange(system, from, to),
    nearest,
  }));
  if (!first) throw new Error('no wiring to change to');
  return others.reduce((best, other) => (sizeOf(other.change) < sizeOf(best.change) ? other : best), first);
}

/** What it took to make one wiring into another, wire by wire as they stand. */
export function changeMade(from: readonly Wire[], to: readonly Wire[]): Change {
  const [before, after] = [wiresByKey(from), wiresByKey(to)];
  const wiresOf = (keyed: Map<string, Wire>, kept: (key: string) => boolean) =>
    [...keyed].flatMap(([key, wire]) => (kept(key) ? [wire] : []));
  return {
    lift: wiresOf(before, (key) => !after.has(key)),
    land: wiresOf(after, (key) => !before.has(key)),
    stays: wiresOf(after, (key) => before.has(key)),
  };
}

/** Whether two wirings join the same terminals of parts, whatever the numbers of the strips. */
export function isSameCircuit(system: System, one: readonly Wire[], other: readonly Wire[]): boolean {
  const [a, b] = [mergeNets(system, one).of, mergeNets(system, other).of];
  const pairs = new Set<string>();
  const [ones, others] = [new Set<number>(), new Set<number>()];
  for (let node = 0; node < system.terminals; node++) {
    if (isWay(system, node)) continue;
    pairs.add(`${a[node]} ${b[node]}`);
    ones.add(a[node]!);
    others.add(b[node]!);
  }
  return pairs.size === ones.size && pairs.size === others.size;
}

const isWay = (system: System, node: number): boolean => {
  const { id, kind } = partOf(system, node);
  return kind.terminals.some(
    (terminal) => terminal.duty === 'joint' && `${id}/${terminal.id}` === system.nodes[node],
  );
};

const byNumber = (system: System, [a, b]: Wire): Pair => [system.nodeOf.get(a)!, system.nodeOf.get(b)!];

function describe(system: System, old: readonly Pair[], to: readonly Wire[]): Places {
  const wanted = mergeNets(system, to).of.slice(0, system.terminals);
  const terminals = Array.from(wanted, (_, node) => node);
  const ways = terminals.filter((node) => isWay(system, node));
  const leads = new Map<number, number>();
  for (const node of terminals)
    if (!ways.includes(node)) leads.set(wanted[node]!, (leads.get(wanted[node]!) ?? 0) + 1);
  /** The strips on which a net of several leads is joined. */
  const strips = new Map<number, Set<number>>();
  for (const way of ways) {
    const net = wanted[way]!;
    if ((leads.get(net) ?? 0) < 2) continue;
    strips.set(net, (strips.get(net) ?? new Set()).add(system.partOfNode[way]!));
  }
  const allows = (way: number, net: number) => strips.get(net)?.has(system.partOfNode[way]!) ?? true;
  return { old, ways, wanted, needy: [...strips.keys()], allows };
}
