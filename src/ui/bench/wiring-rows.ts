import type { Core } from '../../engine/model/part.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { coreAt } from '../wiring/cores.ts';
import { markOf } from '../wiring/names.ts';

/** A wire as a line of a wiring list: from a part's terminal, in a core of this colour, to a terminal. */
export interface WiringRow {
  readonly key: string;
  readonly from: string;
  readonly terminal: string;
  readonly core: string;
  /** The blue core carries line: it must be sleeved. */
  readonly sleeve: boolean;
  readonly to: string;
  readonly into: string;
}

const colour = (core: Core): string => (core === 'green-yellow' ? 'green and yellow' : core);

/**
 * The wires as a list, part by part in the order of the bench.
 * @param isLive whether the node is ever joined to line while at rest
 */
export function wiringRows(
  system: System,
  wires: readonly Wire[],
  isLive: (node: number) => boolean,
): WiringRow[] {
  const nodeOf = (terminal: string) => system.nodeOf.get(terminal) ?? -1;
  const isJoint = (terminal: string) => coreAt(system, terminal) === undefined;
  const usedAsLine = (terminal: string) => {
    const node = nodeOf(terminal);
    const duty = partOf(system, node).kind.terminals.find(({ id }) => id === markOf(terminal))?.duty;
    return duty === 'line' || duty === 'switched' || isLive(node);
  };
  return wires
    .map(([a, b]): [string, string] => {
      // A lead goes to a joint, the earlier part to the later one.
      if (isJoint(a) !== isJoint(b)) return isJoint(a) ? [b, a] : [a, b];
      return nodeOf(a) < nodeOf(b) ? [a, b] : [b, a];
    })
    .sort(
      ([a, c], [b, d]) =>
        Number(isJoint(a)) - Number(isJoint(b)) || nodeOf(a) - nodeOf(b) || nodeOf(c) - nodeOf(d),
    )
    .map(([from, to]) => {
      const cores = [...new Set([coreAt(system, from), coreAt(system, to)].flatMap((core) => core ?? []))];
      const blue = [from, to].some((end) => coreAt(system, end) === 'blue' && usedAsLine(end));
      return {
        key: wireKey([from, to]),
        from: partOf(system, nodeOf(from)).name,
        terminal: markOf(from),
        core: cores.length > 0 ? cores.map(colour).join(' to ') : 'link',
        sleeve: blue,
        to: partOf(system, nodeOf(to)).name,
        into: markOf(to),
      };
    });
}
