import { joinedTo, wireJoints } from '../../../engine/circuit/plain.ts';
import type { System } from '../../../engine/model/system.ts';
import type { Wire } from '../../../engine/model/wiring.ts';

/** The neutrals and earths of a wiring: wires joined to those poles of any supply through wires alone. */
export function quietWires(system: System, wires: readonly Wire[]): Wire[] {
  const joints = wireJoints(system, wires);
  const poles = system.supplies.flatMap(({ out }) => [
    joinedTo(joints, out.neutral),
    joinedTo(joints, out.earth),
  ]);
  return wires.filter(([end]) => {
    const node = system.nodeOf.get(end);
    return node !== undefined && poles.some((joined) => joined[node] === true);
  });
}
