import type { Test } from '../../engine/diagnose/evidence.ts';
import { arrive } from '../../engine/diagnose/setup.ts';
import { looks } from '../../engine/diagnose/tests.ts';
import { type Part, partNamed, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/*
 * Readings worth taking by somebody who kneels at one enclosure: both probes in it, if that can be. At the strip most
 * contacts can be tested through their own cable.
 */

/**
 * What can be seen, heard and felt from outside: what works, what gets warm, where the lever of a valve stands. Not what
 * goes on inside a boiler.
 */
export const outsideLooks = (system: System): Test[] =>
  looks(arrive(system, [], {})).filter(
    (test) => test.kind !== 'stands' || partNamed(system, test.part).kind.heat !== 'gives',
  );

const reads = (instrument: 'tester' | 'continuity' | 'ohms', a: string, b: string): Test => ({
  kind: 'reads',
  instrument,
  between: [a, b],
});

const partIn = (terminal: string): string => terminal.slice(0, terminal.indexOf('/'));

/** The way of a strip on which each terminal of a part is landed, straight or not at all. */
function strips({ parts }: System, wires: readonly Wire[]): (terminal: string) => string | undefined {
  const joints = new Set(
    parts.flatMap(({ id, kind }) =>
      kind.terminals.filter(({ duty }) => duty === 'joint').map((way) => `${id}/${way.id}`),
    ),
  );
  return (terminal) => {
    if (joints.has(terminal)) return terminal;
    const wire = wires.find((one) => one.includes(terminal) && one.some((end) => joints.has(end)));
    return wire?.find((end) => joints.has(end));
  };
}

/** Terminals of a part that are a neutral or an earth, by name. */
const polesOf = ({ id, kind }: Part): string[] =>
  kind.terminals
    .filter(({ duty }) => duty === 'neutral' || duty === 'earth')
    .map((terminal) => `${id}/${terminal.id}`);

/**
 * Live: the two-pole tester from each terminal to the neutral and the earth of the same enclosure. A part without
 * either is tested at the strip, where its cores are landed.
 */
export function liveReadings(system: System, wires: readonly Wire[]): Test[] {
  const wayOf = strips(system, wires);
  const supplied = system.parts.filter(({ kind }) => kind.supply).flatMap(polesOf);
  const ways = supplied.flatMap((pole) => wayOf(pole) ?? []);
  return system.parts.flatMap((part) => {
    const known = [...polesOf(part), ...ways.filter((way) => partIn(way) === part.id)];
    return part.kind.terminals.flatMap(({ id }) =>
      known
        .filter((pole) => pole !== `${part.id}/${id}`)
        .map((pole) => reads('tester', `${part.id}/${id}`, pole)),
    );
  });
}

/**
 * Dead: continuity along each wire, through each contact and to the case, at the part and through its cable from the
 * strip; ohms of motors, coils and heaters. Ohms of electronics tell little (common practice) and are left out.
 */
export function deadReadings(system: System, wires: readonly Wire[]): Test[] {
  const wayOf = strips(system, wires);
  const inside = ({ id, kind, mover }: Part): Test[] => {
    const outside = new Set(kind.terminals.map((terminal) => terminal.id));
    const both = (instrument: 'continuity' | 'ohms', [a, b]: readonly [string, string]): Test[] => {
      if (!outside.has(a) || !outside.has(b)) return [];
      const [from, to] = [`${id}/${a}`, `${id}/${b}`];
      const [near, far] = [wayOf(from), wayOf(to)];
      const atStrip = near && far && near !== far && near !== from && partIn(near) === partIn(far);
      return [reads(instrument, from, to), ...(atStrip ? [reads(instrument, near, far)] : [])];
    };
    const measured = mover >= 0 || kind.heat === 'warms' ? (kind.loads ?? []) : [];
    return [
      ...(kind.contacts ?? []).flatMap(({ between }) => both('continuity', between)),
      ...measured.flatMap(({ between }) => both('ohms', between)),
      // A core on the case, a diode gone short: joints that no healthy part has.
      ...(kind.faults ?? []).flatMap(({ between }) => both('continuity', between)),
    ];
  };
  return [...wires.map(([a, b]) => reads('continuity', a, b)), ...system.parts.flatMap(inside)];
}
