import type { Atoms } from '../circuit/atoms.ts';
import { anyOf } from '../circuit/sets.ts';
import type { System } from '../model/system.ts';

/** Sets of states by port name. */
type Reached<T> = Map<string, T>;

/** Two ports and the states in which they are joined. */
type Joint<T> = readonly [a: string, b: string, when: T];

function jointsOf<T>(system: System, { sets, stands }: Atoms<T>): Joint<T>[] {
  const pipes = system.spec.pipes.map(([a, b]): Joint<T> => [a, b, sets.all]);
  const inside = system.parts.flatMap(({ id, kind, mover }) => {
    const positions = system.movers[mover]?.positions ?? [''];
    const joints = new Map<string, Joint<T>>();
    positions.forEach((position, at) => {
      const here = mover < 0 ? sets.all : stands(mover, at);
      for (const [a, b] of kind.passes?.(position) ?? []) {
        const before = joints.get(`${a} ${b}`)?.[2] ?? sets.none;
        joints.set(`${a} ${b}`, [`${id}/${a}`, `${id}/${b}`, sets.or(before, here)]);
      }
    });
    return [...joints.values()];
  });
  return [...pipes, ...inside];
}

function spread<T>({ sets }: Atoms<T>, joints: readonly Joint<T>[], start: string): Reached<T> {
  const reached: Reached<T> = new Map([[start, sets.all]]);
  const at = (port: string) => reached.get(port) ?? sets.none;
  const add = (port: string, more: T): boolean => {
    if (sets.isNone(sets.and(more, sets.not(at(port))))) return false;
    reached.set(port, sets.or(at(port), more));
    return true;
  };
  for (let changed = true; changed; ) {
    changed = false;
    for (const [a, b, when] of joints) {
      if (add(b, sets.and(at(a), when))) changed = true;
      if (add(a, sets.and(at(b), when))) changed = true;
    }
  }
  return reached;
}

/**
 * The same as `openWays` for every state at once: per part that brings heat, the states in which its heat can get to
 * each part that takes it or lets it by.
 */
export function sweepWays<T>(system: System, atoms: Atoms<T>): Map<string, Map<string, T>> {
  const joints = jointsOf(system, atoms);
  const { sets } = atoms;
  const takers = system.parts.filter(({ kind }) => kind.heat === 'takes' || kind.heat === 'bypass');
  const ways = new Map<string, Map<string, T>>();
  for (const { id, kind } of system.parts) {
    if (kind.heat === 'warms') ways.set(id, new Map([[id, sets.all]]));
    if (kind.heat !== 'gives') continue;
    const flow = spread(atoms, joints, `${id}/flow`);
    const back = spread(atoms, joints, `${id}/return`);
    const open = takers.map((taker): [string, T] => {
      const [to, from] = [flow.get(`${taker.id}/in`), back.get(`${taker.id}/out`)];
      return [taker.id, to === undefined || from === undefined ? sets.none : sets.and(to, from)];
    });
    ways.set(id, new Map(open));
  }
  return ways;
}

/** States in which any heat source can get its heat to the part. */
export const openTo = <T>(atoms: Atoms<T>, ways: Map<string, Map<string, T>>, part: string): T =>
  anyOf(
    atoms.sets,
    [...ways.values()].flatMap((way) => way.get(part) ?? []),
  );
