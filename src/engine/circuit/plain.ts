import { type Config, type Place, partState, positionIndex, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/**
 * One state at a time, as plainly as it can be said: this is what the fast evaluator must agree with, and what
 * the live view shows.
 */
export interface Live {
  /** Per node: joined to line, to neutral, to earth through wires and closed contacts alone. */
  readonly line: readonly boolean[];
  readonly neutral: readonly boolean[];
  readonly earth: readonly boolean[];
  /** Per load: whether it works. */
  readonly works: readonly boolean[];
}

/** Node numbers that each node is joined to: by wires always, by contacts while they are closed. */
export type Joints = readonly (readonly number[])[];

/** Joints made by wires alone. Wires must name terminals of the system. */
export function wireJoints(system: System, wires: readonly Wire[]): number[][] {
  const joints: number[][] = system.nodes.map(() => []);
  for (const [from, to] of wires) {
    const a = system.nodeOf.get(from)!;
    const b = system.nodeOf.get(to)!;
    joints[a]!.push(b);
    joints[b]!.push(a);
  }
  return joints;
}

/** Which contacts are closed in a configuration, in the system's order. */
export function closedContacts(system: System, config: Config): boolean[] {
  const states = system.parts.map((part) => partState(system, part, config));
  return system.contacts.map(({ part, spec }) => spec.closed(states[part]!));
}

/** Joints made by wires and by the contacts that are closed in this configuration. */
export function jointsIn(system: System, wires: readonly Wire[], config: Config): number[][] {
  const joints = wireJoints(system, wires);
  const closed = closedContacts(system, config);
  system.contacts.forEach(({ a, b }, k) => {
    if (!closed[k]) return;
    joints[a]!.push(b);
    joints[b]!.push(a);
  });
  return joints;
}

/** Everything joined to a node, per node. */
export function joinedTo(joints: Joints, start: number): boolean[] {
  const seen = joints.map(() => false);
  const waiting = [start];
  seen[start] = true;
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const next of joints[node]!) {
      if (seen[next]) continue;
      seen[next] = true;
      waiting.push(next);
    }
  }
  return seen;
}

/** What is live, and which loads work, in one configuration of a wired system. */
export function evaluate(system: System, wires: readonly Wire[], config: Config): Live {
  const joints = jointsIn(system, wires, config);
  const line = joinedTo(joints, system.supply.line);
  const neutral = joinedTo(joints, system.supply.neutral);
  const earth = joinedTo(joints, system.supply.earth);
  const works = system.loads.map(({ a, b, via, dead }) => {
    if (dead) return false;
    const across = (line[a]! && neutral[b]!) || (neutral[a]! && line[b]!);
    const clamped = via >= 0 && (line[via]! || neutral[via]!);
    return across && !clamped;
  });
  return { line, neutral, earth, works };
}

/** Which way each mover goes: 1 driven, 0 held or at its end, -1 taken back by its spring. */
export function directions(system: System, live: Live, place: Place): number[] {
  return system.movers.map((mover) => {
    const at = positionIndex(mover, place);
    if (mover.stuck) return 0;
    if (live.works[mover.drive]) return at < mover.positions.length - 1 ? 1 : 0;
    if (mover.hold >= 0 && live.works[mover.hold]) return 0;
    return at > 0 && !mover.unsprung ? -1 : 0;
  });
}

/** Every place that one move of one valve leads to; none when the system is at rest. */
export function nextPlaces(system: System, live: Live, place: Place): Place[] {
  return directions(system, live, place).flatMap((step, k) =>
    step === 0 ? [] : [place + step * system.movers[k]!.stride],
  );
}

/** Whether every load of the part that its work needs is working: a boiler fires, a pump pumps. */
export function atWork(system: System, live: Live, does: 'fires' | 'pumps'): boolean {
  return system.parts.some((part, p) => {
    const { work } = part.kind;
    if (work?.does !== does) return false;
    return work.needs.every((need) =>
      system.loads.some((load, l) => load.part === p && load.spec.id === need && live.works[l]),
    );
  });
}
