import { type Part, type Place, positionOf, type System } from '../model/system.ts';

/** Which pipe ports are joined to which, with the valves in this place. Keys are `part/port`. */
function pipeJoints(system: System, place: Place): Map<string, string[]> {
  const joints = new Map<string, string[]>();
  const join = (a: string, b: string) => {
    joints.set(a, [...(joints.get(a) ?? []), b]);
    joints.set(b, [...(joints.get(b) ?? []), a]);
  };
  for (const [a, b] of system.spec.pipes) join(a, b);
  for (const part of system.parts) {
    const passes = part.kind.passes?.(positionOf(system, part, place)) ?? [];
    for (const [a, b] of passes) join(`${part.id}/${a}`, `${part.id}/${b}`);
  }
  return joints;
}

function reached(joints: ReadonlyMap<string, readonly string[]>, start: string): Set<string> {
  const seen = new Set([start]);
  for (const port of seen) {
    for (const next of joints.get(port) ?? []) seen.add(next);
  }
  return seen;
}

/** All ports that water from any heat source can reach, on the flow side and on the return side, in this place. */
export function openPorts(system: System, place: Place): { flow: Set<string>; back: Set<string> } {
  const joints = pipeJoints(system, place);
  const flow = new Set<string>();
  const back = new Set<string>();
  for (const { id } of givers(system)) {
    for (const port of reached(joints, `${id}/flow`)) flow.add(port);
    for (const port of reached(joints, `${id}/return`)) back.add(port);
  }
  return { flow, back };
}

/** Parts that give heat to the water. */
export const givers = ({ parts }: System): readonly Part[] =>
  parts.filter(({ kind }) => kind.heat === 'gives');

/** Pipes never change: each place of a system is worked out once. */
const known = new WeakMap<System, Map<Place, ReadonlyMap<string, ReadonlySet<string>>>>();

/** Per part that brings heat, by id: the parts that its heat can get to in this place. An immersion warms itself alone. */
export function openWays(system: System, place: Place): ReadonlyMap<string, ReadonlySet<string>> {
  const places = known.get(system) ?? new Map<Place, ReadonlyMap<string, ReadonlySet<string>>>();
  known.set(system, places);
  const ways = places.get(place) ?? findWays(system, place);
  places.set(place, ways);
  return ways;
}

/**
 * Names of the parts that take heat (a coil, radiators) and lie on an open path from a heat source's flow to its
 * return. Nothing passes through such a part on the way to another: they stand between flow and return.
 */
export function openPaths(system: System, place: Place): ReadonlySet<string> {
  const ways = [...openWays(system, place).values()];
  return ways.length === 1 ? ways[0]! : new Set(ways.flatMap((way) => [...way]));
}

function findWays(system: System, place: Place): Map<string, ReadonlySet<string>> {
  const joints = pipeJoints(system, place);
  const takers = system.parts.filter(({ kind }) => kind.heat === 'takes' || kind.heat === 'bypass');
  const ways = new Map<string, ReadonlySet<string>>();
  for (const { id, kind } of system.parts) {
    if (kind.heat === 'warms') ways.set(id, new Set([id]));
    if (kind.heat !== 'gives') continue;
    const flow = reached(joints, `${id}/flow`);
    const back = reached(joints, `${id}/return`);
    const open = takers.filter((taker) => flow.has(`${taker.id}/in`) && back.has(`${taker.id}/out`));
    ways.set(id, new Set(open.map((taker) => taker.id)));
  }
  return ways;
}
