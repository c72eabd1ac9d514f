import { type Place, positionOf, type System } from '../model/system.ts';

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

/** All ports that water from the boiler can reach, on the flow side and on the return side, in this place. */
export function openPorts(system: System, place: Place): { flow: Set<string>; back: Set<string> } {
  const joints = pipeJoints(system, place);
  const flow = new Set<string>();
  const back = new Set<string>();
  for (const source of system.parts.filter((part) => part.kind.heat === 'gives')) {
    for (const port of reached(joints, `${source.id}/flow`)) flow.add(port);
    for (const port of reached(joints, `${source.id}/return`)) back.add(port);
  }
  return { flow, back };
}

/** Pipes never change: each place of a system is worked out once. */
const known = new WeakMap<System, Map<Place, ReadonlySet<string>>>();

/**
 * Names of the parts that take heat (a coil, radiators) and lie on an open path from a boiler's flow to its
 * return. Nothing passes through such a part on the way to another: they stand between flow and return.
 */
export function openPaths(system: System, place: Place): ReadonlySet<string> {
  const places = known.get(system) ?? new Map<Place, ReadonlySet<string>>();
  known.set(system, places);
  const paths = places.get(place) ?? findPaths(system, place);
  places.set(place, paths);
  return paths;
}

function findPaths(system: System, place: Place): Set<string> {
  const { flow, back } = openPorts(system, place);
  const takers = system.parts.filter((part) => part.kind.heat === 'takes');
  return new Set(
    takers.filter(({ id }) => flow.has(`${id}/in`) && back.has(`${id}/out`)).map(({ id }) => id),
  );
}
