import { mergeNets } from '../circuit/nets.ts';
import { closedContacts } from '../circuit/plain.ts';
import type { Config, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** An element of a part between two nets: ohms, or a diode (from `a` to `b`) with ohms in series. */
export interface Branch {
  /** `part/element`, such as `pump/motor`. */
  readonly name: string;
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  readonly diode: boolean;
}

/** A wired system in one configuration, as the meter sees it: nets joined by wires and closed contacts, and what lies between them. */
export interface Circuit {
  /** Per node of the system: its net, from 0 to `count - 1`. */
  readonly of: ArrayLike<number>;
  readonly count: number;
  readonly branches: readonly Branch[];
  /** Net of the incoming line, and the net of the incoming neutral and earth: the 0 V that volts are reckoned from. */
  readonly line: number;
  readonly zero: number;
  /** Whether the incoming line reaches a terminal: the supply is on. */
  readonly live: boolean;
  /** Line is joined to neutral or earth with no load between: the fuse opens, and the short holds the line at 0 V. */
  readonly blown: boolean;
}

/**
 * Assumptions: wires and closed contacts have no resistance; neutral is joined to earth at the source (TN), before
 * the switch; a direct short always blows the fuse, and no sum of loads does. Wires must name terminals of the system.
 */
export function circuitOf(system: System, wires: readonly Wire[], config: Config): Circuit {
  const { supply, nodes } = system;
  const closed = closedContacts(system, config);
  const joints: Wire[] = system.contacts
    .filter((_, k) => closed[k])
    .map(({ a, b }): Wire => [nodes[a]!, nodes[b]!]);
  const bond: Wire = [nodes[supply.neutral]!, nodes[supply.earth]!];
  // Every supply comes from the same board: one line, one neutral and one earth before their switches.
  const board = system.supplies.slice(1).flatMap(({ line, neutral, earth }): Wire[] => [
    [nodes[line]!, nodes[supply.line]!],
    [nodes[neutral]!, nodes[supply.neutral]!],
    [nodes[earth]!, nodes[supply.earth]!],
  ]);
  const { of, count } = mergeNets(system, [...wires, ...joints, bond, ...board]);
  const branches = system.parts.flatMap(({ id, kind }) =>
    (kind.elements ?? []).map(({ id: element, between, ohms, diode }): Branch => {
      const net = (end: string) =>
        of[(system.nodeOf.get(`${id}/${end}`) ?? system.nodeOf.get(`${id}/(${end})`))!]!;
      return {
        name: `${id}/${element}`,
        a: net(between[0]),
        b: net(between[1]),
        ohms,
        diode: diode ?? false,
      };
    }),
  );
  const live = system.contacts.some(
    ({ a, b }, k) => closed[k] && system.supplies.some(({ line }) => a === line || b === line),
  );
  const [line, zero] = [of[supply.line]!, of[supply.neutral]!];
  return { of, count, branches, line, zero, live, blown: line === zero };
}
