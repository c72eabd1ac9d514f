import type { Part, System } from '../../engine/model/system.ts';

/** A place the flow water comes to: a part, or a tee in the pipe when `part` is null. */
export interface Stop {
  readonly part: Part | null;
  /** The port the water comes in by (empty at a tee). */
  readonly entry: string;
  readonly ways: readonly Way[];
  /** Parts that take heat from here on, by id. */
  readonly takers: readonly string[];
}

/** A way on from a stop: the port the water leaves by, and where it comes next. */
export interface Way {
  readonly port: string;
  readonly stop: Stop;
}

/** A heating loop as read from the pipes. */
export interface Tree {
  readonly source: Part;
  /** Other heat sources on the same flow and return, such as a second boiler. */
  readonly beside: readonly Part[];
  readonly first: Stop;
  /** Parts in the common return, the one nearest the boiler first. */
  readonly back: readonly Part[];
}

/** Ports that pipes alone join to this one, `part/port`, itself left out. */
function joined(system: System, port: string): string[] {
  const seen = new Set([port]);
  for (const at of seen) {
    for (const [a, b] of system.spec.pipes) {
      if (a === at) seen.add(b);
      if (b === at) seen.add(a);
    }
  }
  return [...seen].filter((other) => other !== port);
}

const split = (key: string): [id: string, port: string] => {
  const cut = key.indexOf('/');
  return [key.slice(0, cut), key.slice(cut + 1)];
};

const hasCoil = (system: System, stop: Stop): boolean =>
  stop.takers.some((id) => system.spec.parts[id]?.kind.endsWith('coil'));

/** Parts that water stops at: they take its heat, or let it by to the return. */
export const isEnd = ({ kind }: Part): boolean => kind.heat === 'takes' || kind.heat === 'bypass';

const isSource = ({ kind }: Part): boolean => kind.heat === 'gives';

/** The heating loops of a system: one for each heat source, or for several that share their flow. */
export function readLoops(system: System): Tree[] {
  const loops: Tree[] = [];
  for (const source of system.parts.filter(isSource)) {
    if (loops.some(({ beside }) => beside.includes(source))) continue;
    loops.push(readTree(system, source));
  }
  return loops;
}

/** All parts of a loop that water runs through. */
export function partsOf({ source, beside, first, back }: Tree): Part[] {
  const under = ({ part, ways }: Stop): Part[] => [
    ...(part ? [part] : []),
    ...ways.flatMap(({ stop }) => under(stop)),
  ];
  return [source, ...beside, ...under(first), ...back];
}

/**
 * Reads the pipes as a tree from a heat source's flow to the parts that take heat. A way to a cylinder comes
 * after the others, so that the tall part stands lowest in the drawing.
 * Throws an Error that names the part when the pipes are not one boiler's loop.
 */
export function readTree(system: System, source = system.parts.find(isSource)): Tree {
  if (!source) throw new Error('no boiler in the pipework');
  const partAt = (key: string): Part => {
    const part = system.parts.find(({ id }) => id === split(key)[0]);
    if (!part) throw new Error(`pipe to unknown part "${key}"`);
    return part;
  };
  const visited = new Set<string>();
  const beside: Part[] = [];

  const enter = (key: string): Stop => {
    const part = partAt(key);
    if (visited.has(part.id) || part === source) throw new Error(`water comes to "${part.id}" by two ways`);
    visited.add(part.id);
    const entry = split(key)[1];
    if (isEnd(part)) return { part, entry, ways: [], takers: [part.id] };
    const ports = (part.kind.ports ?? []).filter((port) => port !== entry);
    return gather(
      part,
      entry,
      ports.map((port) => ({ port, stop: leave(`${part.id}/${port}`) })),
    );
  };
  const gather = (part: Part | null, entry: string, ways: Way[]): Stop => {
    const ordered = [...ways].sort(
      (a, b) => Number(hasCoil(system, a.stop)) - Number(hasCoil(system, b.stop)),
    );
    return { part, entry, ways: ordered, takers: ordered.flatMap(({ stop }) => stop.takers) };
  };
  const leave = (port: string): Stop => {
    const beyond = joined(system, port);
    beside.push(...beyond.map(partAt).filter((part) => isSource(part) && part !== source));
    const [only, ...more] = beyond.filter((key) => !isSource(partAt(key)));
    if (only === undefined) throw new Error(`no pipe at "${port}"`);
    if (more.length === 0) return enter(only);
    return gather(
      null,
      '',
      [only, ...more].map((key) => ({ port: '', stop: enter(key) })),
    );
  };

  const first = leave(`${source.id}/flow`);
  const back: Part[] = [];
  const before = (port: string) => joined(system, port).filter((key) => !isSource(partAt(key)));
  let ends = before(`${source.id}/return`);
  for (let only = ends[0]; ends.length === 1 && only && !isEnd(partAt(only)); only = ends[0]) {
    const part = partAt(only);
    if (visited.has(part.id)) throw new Error(`water comes to "${part.id}" by two ways`);
    visited.add(part.id);
    back.push(part);
    const port = part.kind.ports?.find((other) => `${part.id}/${other}` !== only);
    ends = before(`${part.id}/${port}`);
  }
  const lost = first.takers.find((id) => !ends.includes(`${id}/out`));
  if (lost) throw new Error(`the return of "${lost}" does not reach the boiler`);
  return { source, beside, first, back };
}

/** The parts water passes on its way from the boiler to a taker, with the ports it comes in and leaves by. */
export function wayTo(stop: Stop, taker: string): { part: Part; entry: string; exit: string }[] {
  const way = stop.ways.find((on) => on.stop.takers.includes(taker));
  if (!way) return [];
  const here = stop.part ? [{ part: stop.part, entry: stop.entry, exit: way.port }] : [];
  return [...here, ...wayTo(way.stop, taker)];
}
