import { mergeNets } from '../../engine/circuit/nets.ts';
import { type Change, nearestChange } from '../../engine/grade/change.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import { canonicalWires, type Wire, wireKey } from '../../engine/model/wiring.ts';
import { sure } from './sure.ts';

/** A way of a strip that the wiring uses for nothing else. */
export const FREE_WAY = 'free';

/**
 * One thing wrong with a wiring, in the numbers of the layout's own right wiring: a wire that is there and should not
 * be, a wire that is missing, or both where a lead is in the wrong place. An end is a terminal, or `free`.
 */
export interface Slip {
  readonly there?: Wire;
  readonly missing?: Wire;
}

/** How a wrong wiring differs from the nearest right one. */
export interface Slips {
  /** Which of the right wirings is nearest: its place in the list given. */
  readonly nearest: number;
  readonly slips: readonly Slip[];
  /** The wires to lift, as the learner has them, and those to land instead. */
  readonly change: Change;
}

/** Whether a terminal is a numbered way that only joins. */
export const isWay = (system: System, terminal: string): boolean => {
  const node = system.nodeOf.get(terminal);
  if (node === undefined) return false;
  const { id, kind } = partOf(system, node);
  return kind.terminals.some((one) => one.duty === 'joint' && `${id}/${one.id}` === terminal);
};

/**
 * For each terminal of a wiring, what it is called in the right wiring that it can be made into: a lead keeps its name,
 * a way has the number that its leads are joined on there.
 * @param after the wiring once it is put right, in the learner's numbers
 */
function translator(system: System, after: readonly Wire[], right: readonly Wire[]) {
  const [own, theirs] = [mergeNets(system, right).of, mergeNets(system, after).of];
  const used = new Set(right.flat());
  const ways = system.nodes.filter((name) => isWay(system, name) && used.has(name));
  const wayOf = new Map<number, string>();
  for (const way of ways) {
    const net = sure(own[sure(system.nodeOf.get(way))]);
    if (!wayOf.has(net)) wayOf.set(net, way);
  }
  const lead = new Map<number, number>();
  for (let node = 0; node < system.terminals; node++)
    if (!isWay(system, sure(system.nodes[node])) && !lead.has(sure(theirs[node])))
      lead.set(sure(theirs[node]), node);
  return (terminal: string): string => {
    if (!isWay(system, terminal)) return terminal;
    const node = lead.get(sure(theirs[sure(system.nodeOf.get(terminal))]));
    return (node === undefined ? undefined : wayOf.get(sure(own[node]))) ?? FREE_WAY;
  };
}

/**
 * What each way is called by what is landed in it: numbers of the strip do not matter.
 * Twice over, so that a way that only links to another is called by that one's leads.
 */
function namedByLeads(system: System, wires: readonly Wire[]): ReadonlyMap<string, string> {
  const near = new Map<string, string[]>();
  for (const [a, b] of wires)
    for (const [way, end] of [
      [a, b],
      [b, a],
    ] as const)
      if (isWay(system, way)) near.set(way, [...(near.get(way) ?? []), end]);
  let called = new Map([...near.keys()].map((way) => [way, '']));
  for (let round = 0; round < 2; round++)
    called = new Map(
      [...near].map(([way, ends]) => {
        const words = ends.map((end) => called.get(end) ?? end).sort();
        return [way, `${stripOf(way)}(${words.join('+')})`];
      }),
    );
  return called;
}

const stripOf = (way: string): string => way.slice(0, way.indexOf('/'));

/** Numbers for the ways in use that depend on the circuit alone, and the way back. */
function evenNumbers(system: System, wires: readonly Wire[]) {
  const named = [...namedByLeads(system, wires)].sort(([, a], [, b]) => (a < b ? -1 : a > b ? 1 : 0));
  const ways = Map.groupBy(
    system.nodes.filter((name) => isWay(system, name)),
    stripOf,
  );
  const taken = new Map<string, number>();
  const pairs = named.map(([way]): [string, string] => {
    const strip = stripOf(way);
    const k = taken.get(strip) ?? 0;
    taken.set(strip, k + 1);
    return [way, ways.get(strip)?.[k] ?? way];
  });
  // A way that is free may be wanted when wires are landed: it gets one of the numbers that are left.
  for (const [strip, all] of ways) {
    const free = all.filter((way) => !pairs.some(([own]) => own === way));
    const from = taken.get(strip) ?? 0;
    free.forEach((way, k) => {
      pairs.push([way, all[from + k] ?? way]);
    });
  }
  const there = new Map(pairs);
  const back = new Map(pairs.map(([own, even]) => [even, own]));
  const through =
    (names: ReadonlyMap<string, string>) =>
    ([a, b]: Wire): Wire => [names.get(a) ?? a, names.get(b) ?? b];
  return { even: through(there), own: through(back) };
}

/**
 * What is wrong with a wiring, in the numbers of the nearest right one: numbers of the strip alone are never wrong, so
 * the same slip is the same whatever variant of the strip it was made on. All wires must name terminals of the system.
 * @param right at least one right wiring
 */
export function slipsOf(system: System, wires: readonly Wire[], right: readonly (readonly Wire[])[]): Slips {
  const { even, own } = evenNumbers(system, wires);
  // In an order of their own too: of equal changes the same one is taken, however the wiring was written down.
  const { change, nearest } = nearestChange(system, canonicalWires(wires.map(even)), right);
  const name = translator(system, [...change.stays, ...change.land], sure(right[nearest]));
  const called = ([a, b]: Wire): Wire => [name(a), name(b)];
  const missing = change.land.map((wire): Wire => {
    const [a, b] = called(wire);
    // A link that joins a lead in a way of its own to the way where it belongs: said of the lead.
    const lead = a === b ? leadAt(system, change.stays, wire) : undefined;
    return lead === undefined ? [a, b] : [lead, b];
  });
  const slips = change.lift.map((wire): Slip => {
    const there = called(wire);
    // The lead that was landed in the wrong place, and where it belongs.
    const at = missing.findIndex((one) => one.some((end) => !isWay(system, end) && there.includes(end)));
    const [belongs] = at < 0 ? [] : missing.splice(at, 1);
    return belongs ? { there, missing: belongs } : { there };
  });
  // The right circuit, but by way of a strip where it must not be.
  const astray = change.stays.map(called).filter((wire) => wire.includes(FREE_WAY));
  const isSame = change.lift.length + change.land.length === 0;
  return {
    nearest,
    slips: [
      ...slips,
      ...missing.map((one): Slip => ({ missing: one })),
      ...(isSame ? astray.map((there): Slip => ({ there })) : []),
    ],
    change: {
      lift: change.lift.map(own),
      land: change.land.map(own),
      stays: change.stays.map(own),
    },
  };
}

/** Of two ways that are to be linked, a lead in the one that holds fewer. */
function leadAt(system: System, stays: readonly Wire[], link: Wire): string | undefined {
  const { of } = mergeNets(system, stays);
  const [fewer] = link
    .map((way) =>
      system.nodes
        .slice(0, system.terminals)
        .filter((name, node) => of[node] === of[sure(system.nodeOf.get(way))] && !isWay(system, name)),
    )
    .filter((leads) => leads.length > 0)
    .sort((a, b) => a.length - b.length);
  return fewer?.[0];
}

/** One name for a slip. */
export const slipKey = ({ there, missing }: Slip): string =>
  `${there ? wireKey(there) : ''} > ${missing ? wireKey(missing) : ''}`;

/** A wiring as text in which the numbers of strips do not matter. */
export function sameCircuitKey(system: System, wires: readonly Wire[]): string {
  const called = namedByLeads(system, wires);
  const name = (end: string) => called.get(end) ?? end;
  return [...new Set(wires.map(([a, b]) => wireKey([name(a), name(b)])))].sort().join('; ');
}
