import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** Leads of parts that wires alone join to a lead, itself included, in the system's order; the strip left out. */
function company(system: System, wires: readonly Wire[], lead: number): number[] {
  const joined = joinedTo(wireJoints(system, wires), lead);
  return joined.flatMap((on, node) =>
    on && node < system.terminals && partOf(system, node).kind.kind !== 'strip' ? [node] : [],
  );
}

export interface Difference {
  readonly lead: string;
  /** Leads it meets in the one wiring and not in the other. */
  readonly only: { readonly mine: readonly string[]; readonly theirs: readonly string[] };
}

/**
 * How two wirings differ as circuits, whatever the strip's numbers: leads that meet others in one than in the other.
 * Empty when they are the same circuit. Each difference is told once, from the lead with fewest to meet.
 */
export function compareWirings(system: System, mine: readonly Wire[], theirs: readonly Wire[]): Difference[] {
  const leads = Array.from({ length: system.terminals }, (_, node) => node).filter(
    (node) => partOf(system, node).kind.kind !== 'strip',
  );
  const name = (node: number) => system.nodes[node]!;
  const told = new Set<string>();
  return leads
    .map((lead) => {
      const [a, b] = [company(system, mine, lead), company(system, theirs, lead)];
      return { lead, mine: a.filter((n) => !b.includes(n)), theirs: b.filter((n) => !a.includes(n)) };
    })
    .filter((item) => item.mine.length + item.theirs.length > 0)
    .sort((p, q) => q.mine.length + q.theirs.length - (p.mine.length + p.theirs.length))
    .flatMap(({ lead, mine: m, theirs: t }) => {
      const fresh = [...m.map((n) => ['mine', n] as const), ...t.map((n) => ['theirs', n] as const)].filter(
        ([side, n]) => !told.has(`${side} ${[lead, n].sort((x, y) => x - y).join(' ')}`),
      );
      if (fresh.length === 0) return [];
      for (const [side, n] of fresh) told.add(`${side} ${[lead, n].sort((x, y) => x - y).join(' ')}`);
      return [{ lead: name(lead), only: { mine: m.map(name), theirs: t.map(name) } }];
    });
}
