import { FREE, joined, type Pair, type Places } from './strip-places.ts';

/**
 * The wires that join the pieces of each net that the kept wires leave: on the emptiest of its ways, or, where it has
 * no way, with the wires of the wanted wiring.
 * @param netOf the net that each node is to be in
 */
export function landings(
  { ways, wanted }: Places,
  netOf: (node: number) => number,
  kept: readonly Pair[],
  to: readonly Pair[],
): Pair[] {
  const land: Pair[] = [];
  const crowd = new Array<number>(wanted.length).fill(0);
  const count = (pair: Pair) => {
    for (const node of pair) crowd[node]!++;
  };
  const put = (pair: Pair) => {
    land.push(pair);
    count(pair);
  };
  const emptiest = (nodes: readonly number[]) =>
    nodes.reduce((best, node) => (crowd[node]! < crowd[best]! ? node : best));
  kept.forEach(count);

  const isWay = new Set(ways);
  const piece = joined(kept, wanted.length);
  for (const [net, nodes] of grouped(
    Array.from(wanted, (_, node) => node),
    netOf,
  )) {
    if (net === FREE) continue;
    const pieces = [...grouped(nodes, (node) => piece[node]!).values()].map((all) => ({
      all,
      joints: all.filter((node) => isWay.has(node)),
    }));
    const [main, ...others] = pieces.filter(({ joints }) => joints.length > 0);
    if (!main) {
      directly(new Set(nodes), kept, to).forEach(put);
      continue;
    }
    for (const { joints } of others) put([emptiest(joints), emptiest(main.joints)]);
    const joints = pieces.flatMap((one) => one.joints);
    for (const one of pieces) if (one.joints.length === 0) put([emptiest(one.all), emptiest(joints)]);
  }
  return land;
}

function grouped(nodes: readonly number[], keyOf: (node: number) => number): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  for (const node of nodes) {
    const group = groups.get(keyOf(node));
    if (group) group.push(node);
    else groups.set(keyOf(node), [node]);
  }
  return groups;
}

/** Of the wires wanted between these nodes, those that join what is not joined yet. */
function directly(nodes: ReadonlySet<number>, kept: readonly Pair[], to: readonly Pair[]): Pair[] {
  const chosen: Pair[] = [];
  const count = Math.max(0, ...[...kept, ...to].flat()) + 1;
  for (const pair of to) {
    if (!pair.every((node) => nodes.has(node))) continue;
    const group = joined([...kept, ...chosen], count);
    if (group[pair[0]] !== group[pair[1]]) chosen.push(pair);
  }
  return chosen;
}
