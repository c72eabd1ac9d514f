import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import type { System } from '../../engine/model/system.ts';
import { canonicalWires, type Wire } from '../../engine/model/wiring.ts';
import { coreAt, coreCode, coreOf } from '../wiring/cores.ts';
import { markOf, nameOf } from '../wiring/names.ts';

/** One wire of a wiring list. */
export interface ListedWire {
  /** From 1. */
  readonly number: number;
  readonly from: string;
  readonly to: string;
  /** Letters of the core (IEC 60757); a link's are those of what it carries. */
  readonly core: string;
}

/** A lead of a part, as a worksheet lists it. */
export interface ListedLead {
  readonly mark: string;
  readonly core: string;
  /** Where it is landed already: ways by number, other terminals by name. */
  readonly given: readonly string[];
}

export interface ListedPart {
  readonly name: string;
  readonly leads: readonly ListedLead[];
}

const isWay = (system: System, terminal: string): boolean =>
  system.parts.some(({ id, kind }) => kind.kind === 'strip' && terminal.startsWith(`${id}/`));

/** Every wire once, lead by lead in the order of the parts; links of the strip come last. */
export function wiringList(system: System, wires: readonly Wire[]): ListedWire[] {
  const at = (terminal: string) => (isWay(system, terminal) ? 1e6 : 0) + (system.nodeOf.get(terminal) ?? 0);
  const joined = wireJoints(system, wires);
  const permanent = {
    neutral: joinedTo(joined, system.supply.out.neutral),
    earth: joinedTo(joined, system.supply.out.earth),
  };
  return canonicalWires(wires)
    .map((wire): Wire => (at(wire[0]) <= at(wire[1]) ? wire : [wire[1], wire[0]]))
    .toSorted((one, two) => at(one[0]) - at(two[0]) || at(one[1]) - at(two[1]))
    .map((wire, k) => ({
      number: k + 1,
      from: nameOf(system, wire[0]),
      to: nameOf(system, wire[1]),
      core: coreCode[coreOf(system, wire, permanent)],
    }));
}

/** Every part with its leads, and where each is landed in these wires. */
export const leadList = (system: System, given: readonly Wire[]): ListedPart[] =>
  system.parts
    .filter(({ kind }) => kind.terminals.length > 0 && kind.kind !== 'strip')
    .map(({ id, name, kind }) => ({
      name,
      leads: kind.terminals.map((terminal) => {
        const own = `${id}/${terminal.id}`;
        const core = coreAt(system, own);
        return {
          mark: terminal.id,
          core: core ? coreCode[core] : '',
          given: given.flatMap(([a, b]) => {
            const end = a === own ? b : b === own ? a : undefined;
            return end === undefined ? [] : [isWay(system, end) ? markOf(end) : nameOf(system, end)];
          }),
        };
      }),
    }));

/** Links from way to way, by their numbers: "3 to 8". */
export const linkList = (system: System, wires: readonly Wire[]): string[] =>
  wires
    .filter((wire) => wire.every((end) => isWay(system, end)))
    .map(([a, b]) => `${markOf(a)} to ${markOf(b)}`);

/** The right wirings that a job's fixed wires leave possible. */
export const rightWith = <T extends { readonly wires: readonly Wire[] }>(
  references: readonly T[],
  fixed: readonly Wire[],
): T[] => {
  const has = (wires: readonly Wire[], [a, b]: Wire) =>
    wires.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
  return references.filter(({ wires }) => fixed.every((wire) => has(wires, wire)));
};
