import type { System } from '../../../src/engine/model/system.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { must } from '../support/must.ts';

/** Every set of wires that a small system can have, as bits, and what each of them joins. */
export interface EveryWiring {
  readonly edges: readonly Wire[];
  /** Per wiring: for each lead the leads it is joined to, in one text. */
  readonly circuits: readonly string[];
  /** Per wiring and lead: the strip terminals it is joined to, as bits. */
  readonly joints: readonly (readonly number[])[];
  readonly leads: readonly string[];
  readonly ways: readonly string[];
}

/** Tries all 2^(n(n−1)/2) wirings between n terminals: for six terminals, 32,768. */
export function everyWiring(system: System): EveryWiring {
  const ends = system.nodes.slice(0, system.terminals);
  const edges = ends.flatMap((a, k) => ends.slice(k + 1).map((b): Wire => [a, b]));
  const leads = ends.filter((end) => !end.startsWith('strip'));
  const ways = ends.filter((end) => end.startsWith('strip'));
  const circuits: string[] = [];
  const joints: number[][] = [];
  for (let bits = 0; bits < 2 ** edges.length; bits++) {
    const group = new Map(ends.map((end, k) => [end, k]));
    edges.forEach(([a, b], k) => {
      const [to, gone] = [group.get(a), group.get(b)];
      if ((bits >> k) & 1) for (const [end, of] of group) if (of === gone) group.set(end, to ?? 0);
    });
    const of = (end: string) => group.get(end);
    circuits.push(leads.map((lead) => leads.findIndex((other) => of(other) === of(lead))).join());
    joints.push(
      leads.map((lead) => ways.reduce((sum, way, k) => (of(way) === of(lead) ? sum | (1 << k) : sum), 0)),
    );
  }
  return { edges, circuits, joints, leads, ways };
}

/**
 * The fewest wires in which a wiring of the circuit `to` differs from `from`, over all there are. Several leads that
 * `to` joins on a strip must be joined on that strip and on no other.
 */
export function fewest(every: EveryWiring, from: readonly Wire[], to: readonly Wire[]): number {
  const { edges, circuits, joints, leads, ways } = every;
  const bitsOf = (wires: readonly Wire[]) => {
    const keys = new Set(wires.map(wireKey));
    return edges.reduce((sum, edge, k) => (keys.has(wireKey(edge)) ? sum | (1 << k) : sum), 0);
  };
  const [start, goal] = [bitsOf(from), bitsOf(to)];
  const stripOf = (way: string) => way.slice(0, way.indexOf('/'));
  const company = must(circuits[goal]).split(',');
  /** Per lead: the ways it may and must be joined on, or undefined where it is free. */
  const strips = leads.map((_, lead) => {
    const wanted = must(joints[goal]?.[lead]);
    if (wanted === 0 || company.filter((one) => one === company[lead]).length < 2) return undefined;
    const names = ways.filter((_, k) => (wanted >> k) & 1).map(stripOf);
    return ways.reduce((sum, way, k) => (names.includes(stripOf(way)) ? sum | (1 << k) : sum), 0);
  });
  let best = Number.POSITIVE_INFINITY;
  for (let bits = 0; bits < circuits.length; bits++) {
    if (circuits[bits] !== circuits[goal]) continue;
    const on = must(joints[bits]);
    if (strips.some((may, k) => may !== undefined && (on[k] === 0 || (must(on[k]) & ~may) !== 0))) continue;
    let differ = 0;
    for (let left = bits ^ start; left !== 0; left &= left - 1) differ++;
    best = Math.min(best, differ);
  }
  return best;
}
