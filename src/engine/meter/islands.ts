import type { Branch } from './circuit.ts';

/**
 * Per net, the number of the island it belongs to: nets tied to each other through branches, whatever their ohms.
 * Between two islands nothing fixes the volts. `ties` are further pairs of nets that are tied, such as a source.
 */
export function islandsOf(
  count: number,
  branches: readonly Branch[],
  ties: readonly (readonly [number, number])[] = [],
): number[] {
  const island = Array.from({ length: count }, (_, net) => net);
  for (const [a, b] of [...branches.map((branch) => [branch.a, branch.b] as const), ...ties]) {
    const [from, to] = [island[a]!, island[b]!];
    if (from === to) continue;
    for (let net = 0; net < count; net++) if (island[net] === from) island[net] = to;
  }
  return island;
}
