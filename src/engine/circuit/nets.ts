import type { System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** Nodes merged by wires alone: `of[node]` is the number of its net, from 0 to `count - 1`. */
export interface Nets {
  readonly of: Int16Array;
  readonly count: number;
}

/** Merges what the wires join. The order of wires and of their ends does not matter. */
export function mergeNets(system: System, wires: readonly Wire[]): Nets {
  const total = system.nodes.length;
  const parent = new Int16Array(total);
  for (let k = 0; k < total; k++) parent[k] = k;
  for (const [from, to] of wires) {
    let a = system.nodeOf.get(from)!;
    let b = system.nodeOf.get(to)!;
    while (parent[a] !== a) a = parent[a] = parent[parent[a]!]!;
    while (parent[b] !== b) b = parent[b] = parent[parent[b]!]!;
    // Roots are always the lowest node of their net, so one pass below numbers them all.
    if (a < b) parent[b] = a;
    else parent[a] = b;
  }
  const of = new Int16Array(total);
  let count = 0;
  for (let k = 0; k < total; k++) of[k] = parent[k] === k ? count++ : of[parent[k]!]!;
  return { of, count };
}
