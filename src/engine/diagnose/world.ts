import { failPlace } from '../faults/apply.ts';
import type { Place, System } from '../model/system.ts';
import type { Bench } from './bench.ts';
import type { Candidate } from './candidate.ts';
import { closedIn, layOut, loadWorks, type Rig, type Standing, settle } from './rig.ts';
import type { Setup } from './setup.ts';

/** One way a candidate's system may stand now, with all that a reading needs worked out. */
export interface Stand {
  readonly standing: Standing;
  readonly place: Place;
  /** The fuse of the controls has blown. */
  readonly blown: boolean;
  /** The system with the candidate in it. */
  readonly system: System;
  /** A system with the same pipes and ways: the healthy one where no way leaks, so that ways are worked out once. */
  readonly pipework: System;
  /** Per node: a number that is the same for all nodes joined by wires and closed contacts. */
  readonly nets: Int16Array;
  /** Per such number: 1 when a wire runs in it, so that it can pick up volts from a live core beside it. */
  readonly wired: Uint8Array;
  /** Per load: 1 when it works. */
  readonly works: Uint8Array;
}

/** A candidate and every way its system may stand after what was done so far. */
export interface World {
  readonly candidate: Candidate;
  readonly stands: readonly Stand[];
}

/** How a candidate's system stands on arrival: settled with these settings from cold. */
export function enter(bench: Bench, setup: Setup, candidate: Candidate): World {
  const rig = layOut(bench, setup, candidate);
  return standOn(bench, rig, candidate, [failPlace(bench.system, rig.left, 0)]);
}

/** How it stands after the setup has changed: valves move on from where they were; a renewed part may mend a blown fuse. */
export function follow(bench: Bench, setup: Setup, { candidate, stands }: World): World {
  const rig = layOut(bench, setup, candidate);
  return standOn(
    bench,
    rig,
    candidate,
    stands.map(({ standing }) => standing),
  );
}

/** The same with a new fuse: what is still shorted blows it again. */
export function refuse(bench: Bench, setup: Setup, { candidate, stands }: World): World {
  const rig = layOut(bench, setup, candidate);
  return standOn(
    bench,
    rig,
    candidate,
    stands.map(({ place }) => place),
  );
}

/** Whether nothing that a system could move for lies between two setups. */
export const sameCircuit = (a: Setup, b: Setup): boolean =>
  a.inputs === b.inputs &&
  a.lifted === b.lifted &&
  a.bridges === b.bridges &&
  a.levers === b.levers &&
  a.renewed === b.renewed;

const standOn = (bench: Bench, rig: Rig, candidate: Candidate, from: readonly Standing[]): World => ({
  candidate,
  stands: standsFrom(bench, rig, settle(rig, from)),
});

/** Works out all that a reading needs for these standings. */
export function standsFrom({ system }: Bench, rig: Rig, standings: readonly Standing[]): Stand[] {
  const pipework = rig.system.parts === system.parts ? system : rig.system;
  return standings.map((standing) => standAt(rig, pipework, standing));
}

function standAt(rig: Rig, pipework: System, standing: Standing): Stand {
  const { system } = rig;
  const blown = standing >= system.places;
  const place = standing % system.places;
  const { nets, wired } = netsAt(rig, place, blown);
  const works = Uint8Array.from(system.loads, (_, load) => (loadWorks(rig, load, standing) ? 1 : 0));
  return { standing, place, blown, system, pipework, nets, wired, works };
}

/**
 * What wires and closed contacts join. As for the meter, neutral is joined to earth at the source and all supplies come
 * from one board. A blown fuse opens every pole of line (assumption: one fuse protects them all).
 */
function netsAt(rig: Rig, place: Place, blown: boolean) {
  const { system, nets } = rig;
  const { contacts, supplies, supply, nodes } = system;
  const parent = new Int16Array(nets.count);
  for (let k = 0; k < nets.count; k++) parent[k] = k;
  const root = (net: number): number => {
    let at = net;
    while (parent[at] !== at) at = parent[at] = parent[parent[at]!]!;
    return at;
  };
  const join = (a: number, b: number) => {
    parent[root(nets.of[a]!)] = root(nets.of[b]!);
  };
  join(supply.neutral, supply.earth);
  for (const other of supplies) {
    join(other.line, supply.line);
    join(other.neutral, supply.neutral);
    join(other.earth, supply.earth);
  }
  const closed = closedIn(rig, place >> 5);
  for (let c = 0; c < contacts.length; c++) {
    if (((closed[c]! >>> (place & 31)) & 1) === 0) continue;
    const { a, b } = contacts[c]!;
    if (blown && supplies.some(({ line }) => a === line || b === line)) continue;
    join(a, b);
  }
  const of = Int16Array.from(nodes, (_, node) => root(nets.of[node]!));
  const wired = new Uint8Array(nets.count);
  for (const [end] of rig.wires) wired[of[system.nodeOf.get(end)!]!] = 1;
  return { nets: of, wired };
}
