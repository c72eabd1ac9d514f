import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import type { Core, PartKind } from '../../engine/model/part.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import { canonicalWires, type Wire, wireKey } from '../../engine/model/wiring.ts';
import { coreOf } from '../wiring/cores.ts';
import { markOf, tagOf } from '../wiring/names.ts';

/** A lead landed in a way of the strip, or a link to another way. */
export interface Landing {
  readonly key: string;
  readonly says: string;
  readonly core: Core;
}

/** A way of the strip: leads of parts that ask come in on the left, those of parts that act on the right. */
export interface Way {
  readonly node: number;
  readonly mark: string;
  readonly asks: readonly Landing[];
  readonly acts: readonly Landing[];
}

/** A wire that goes from part to part and touches no way. */
export interface Loose extends Landing {
  readonly node: number;
}

const isJoints = ({ terminals }: PartKind): boolean =>
  terminals.length > 0 && terminals.every(({ duty }) => duty === 'joint');

/** What is landed in each way of the strip, and which wires go past it. */
export function readWays(
  system: System,
  wiring: readonly Wire[],
): { ways: readonly Way[]; loose: readonly Loose[] } {
  const wires = canonicalWires(wiring);
  const joined = wireJoints(system, wires);
  const permanent = {
    neutral: joinedTo(joined, system.supply.out.neutral),
    earth: joinedTo(joined, system.supply.out.earth),
  };
  const onStrip = (terminal: string): boolean =>
    isJoints(partOf(system, system.nodeOf.get(terminal) ?? 0).kind);
  const acts = (terminal: string): boolean => {
    const { kind } = partOf(system, system.nodeOf.get(terminal) ?? 0);
    return kind.motion !== undefined || kind.work !== undefined;
  };
  const ways = system.parts
    .filter(({ kind }) => isJoints(kind))
    .flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}/${terminal.id}`))
    .map((terminal): Way => {
      const landed = wires
        .filter((wire) => wire.includes(terminal))
        .map((wire) => {
          const end = wire[0] === terminal ? wire[1] : wire[0];
          const link = onStrip(end);
          const says = link ? `link to ${markOf(end)}` : tagOf(system, end);
          return {
            right: link || acts(end),
            at: system.nodeOf.get(end) ?? 0,
            key: wireKey(wire),
            says,
            core: coreOf(system, wire, permanent),
          };
        })
        .sort((one, two) => one.at - two.at);
      const side = (right: boolean) =>
        landed
          .filter((one) => one.right === right)
          .map(({ key, says, core }): Landing => ({ key, says, core }));
      return {
        node: system.nodeOf.get(terminal) ?? 0,
        mark: markOf(terminal),
        asks: side(false),
        acts: side(true),
      };
    });
  const loose = wires
    .filter((wire) => !wire.some(onStrip))
    .map((wire) => ({
      key: wireKey(wire),
      says: `${tagOf(system, wire[0])} to ${tagOf(system, wire[1])}`,
      core: coreOf(system, wire, permanent),
      node: system.nodeOf.get(wire[0]) ?? 0,
    }));
  return { ways, loose };
}
