import type { Core } from '../../engine/model/part.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { coreAt } from '../wiring/cores.ts';
import { markOf, nameOf } from '../wiring/names.ts';

/** A lead with the part it belongs to and the colour of its core. */
export interface Lead {
  readonly name: string;
  readonly core?: Core;
}

/** Everything that is landed in one terminal. */
export interface Landed {
  readonly terminal: string;
  /** A way of the strip: shown by its number. */
  readonly way?: string;
  readonly name: string;
  readonly leads: readonly Lead[];
}

/**
 * A wiring as a list by terminals: the ways of the strip in their order, each with the leads in it, then the terminals
 * of parts that other leads are looped to. Every wire stands in it once.
 */
export function landings(system: System, wires: readonly Wire[]): Landed[] {
  const order = new Map(system.nodes.map((name, k) => [name, k]));
  const onStrip = (terminal: string): boolean => {
    const node = system.nodeOf.get(terminal);
    return node !== undefined && partOf(system, node).kind.kind === 'strip';
  };
  const at = new Map<string, string[]>();
  for (const [a, b] of wires) {
    // A lead lands on the strip; a link between two ways, or from part to part, where it is written to go.
    const [lead, goal] = onStrip(a) && !onStrip(b) ? [b, a] : [a, b];
    at.set(goal, [...(at.get(goal) ?? []), lead]);
  }
  const by = (terminal: string) => (onStrip(terminal) ? 0 : 1e6) + (order.get(terminal) ?? 0);
  return [...at]
    .sort(([a], [b]) => by(a) - by(b))
    .map(([terminal, leads]) => ({
      terminal,
      ...(onStrip(terminal) && { way: markOf(terminal) }),
      name: nameOf(system, terminal),
      leads: leads.map((lead) => {
        const core = coreAt(system, lead);
        return { name: nameOf(system, lead), ...(core && { core }) };
      }),
    }));
}
