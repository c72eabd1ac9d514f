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
  /** Per supply and node: joined to that supply's line, to its neutral. */
  readonly lines: readonly (readonly boolean[])[];
  readonly neutrals: readonly (readonly boolean[])[];
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

/** Per node: whether one of several sources reaches it. */
const joinedToAny = (sources: readonly (readonly boolean[])[]): readonly boolean[] =>
  sources.length === 1 ? sources[0]! : sources[0]!.map((_, node) => sources.some((joined) => joined[node]));

/** What is live, and which loads work, in one configuration of a wired system. */
export function evaluate(system: System, wires: readonly Wire[], config: Config): Live {
  const joints = jointsIn(system, wires, config);
  const lines = system.supplies.map((supply) => joinedTo(joints, supply.line));
  const neutrals = system.supplies.map((supply) => joinedTo(joints, supply.neutral));
  const line = joinedToAny(lines);
  const neutral = joinedToAny(neutrals);
  const earth = joinedToAny(system.supplies.map((supply) => joinedTo(joints, supply.earth)));
  const works = system.loads.map(({ a, b, via, dead, spec }) => {
    if (dead) return false;
    if (spec.ownLoop) return joinedTo(joints, a)[b]!;
    const across = (line[a]! && neutral[b]!) || (neutral[a]! && line[b]!);
    const clamped = via >= 0 && (line[via]! || neutral[via]!);
    return across && !clamped;
  });
  return { line, neutral, earth, lines, neutrals, works };
}

/** Which way each mover goes: 1 driven, 0 held or at its end, -1 taken back by its spring. */
export function directions(system: System, live: Live, place: Place): number[] {
  return system.movers.map((mover) => {
    const at = positionIndex(mover, place);
    if (mover.stuck) return 0;
    if (mover.drives.some((drive) => live.works[drive])) return at < mover.positions.length - 1 ? 1 : 0;
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

/** Whether one part does its work: every load that it needs is working. Always for one that needs none. */
export function partWorks(system: System, live: Live, part: number): boolean {
  const works = (need: string) =>
    system.loads.some((load, l) => load.part === part && load.spec.id === need && live.works[l]);
  const needs = system.parts[part]!.kind.work?.needs ?? [];
  return needs.every((need) => (typeof need === 'string' ? works(need) : need.some(works)));
}

/** Ids of the parts at work: boilers that fire, pumps that run, immersions that heat. */
export const partsAtWork = (system: System, live: Live): ReadonlySet<string> =>
  new Set(
    system.parts.filter(({ kind }, part) => kind.work && partWorks(system, live, part)).map(({ id }) => id),
  );

/** Whether any part does this work: a boiler fires, a pump pumps. */
export const atWork = (system: System, live: Live, does: 'fires' | 'pumps' | 'heats'): boolean =>
  system.parts.some(({ kind }, part) => kind.work?.does === does && partWorks(system, live, part));
