import { joinedTo, wireJoints } from '../../../engine/circuit/plain.ts';
import { withFault } from '../../../engine/diagnose/candidate.ts';
import type { Visit } from '../../../engine/diagnose/replay.ts';
import type { Core } from '../../../engine/model/part.ts';
import { partOf, type System } from '../../../engine/model/system.ts';
import { type Wire, wireKey } from '../../../engine/model/wiring.ts';
import { coreAt, coreOf } from '../../wiring/cores.ts';
import { markOf } from '../../wiring/names.ts';

/** A core as it lies in front of somebody with the covers off. A break inside it does not show. */
export interface SeenWire {
  readonly key: string;
  /** The terminals it is in, whatever the drawing says. */
  readonly ends: Wire;
  readonly core: Core;
  /** It hangs free: both ends are out of their terminals. */
  readonly lifted: boolean;
}

/** A lead of the part itself and not a terminal to land a core in: the leads of a valve go by their colours. */
const OWN_LEAD = /^(white|grey|orange|blue|brown|black|earth)$/;
export const isOwnLead = (terminal: string): boolean => OWN_LEAD.test(markOf(terminal));

/** Every core and link as the faulty system has it: wires landed wrong lie where they were landed, and links too many are there. */
export function seenWires({ setup, truth }: Visit): SeenWire[] {
  const { system, wires, lifted } = setup;
  const joints = wireJoints(system, wires);
  const { neutral, earth } = system.supply.out;
  const permanent = { neutral: joinedTo(joints, neutral), earth: joinedTo(joints, earth) };
  const off = new Set(lifted.map(wireKey));
  // Without its failures: parts that failed and cores that broke look as they did before.
  const landed = withFault(system, wires, { ...truth.candidate, failures: [] }).wires;
  return landed.map((ends, k) => {
    const drawn = wires[k] ?? ends;
    const own = ends.find(isOwnLead);
    return {
      key: `${k} ${wireKey(ends)}`,
      ends,
      core: (own === undefined ? undefined : coreAt(system, own)) ?? coreOf(system, drawn, permanent),
      lifted: off.has(wireKey(drawn)),
    };
  });
}

/** One core at a terminal, as seen from there. */
export interface LandedCore extends SeenWire {
  /** The terminal of its other end, and the part that this belongs to. */
  readonly far: string;
  readonly farPart: string;
  /** Which terminal the other end is in: only when that can be seen, or read from the lead's own colour. */
  readonly farMark: string | undefined;
}

/** What lies in each terminal. `open` says which parts have their covers off. */
export function landedCores(
  system: System,
  wires: readonly SeenWire[],
  open: ReadonlySet<string>,
): ReadonlyMap<string, readonly LandedCore[]> {
  const at = new Map<string, LandedCore[]>();
  for (const wire of wires) {
    for (const [here, far] of [wire.ends, [...wire.ends].reverse() as [string, string]]) {
      const farPart = partOf(system, system.nodeOf.get(far) ?? 0).id;
      const seen = open.has(farPart) || isOwnLead(far);
      const core = { ...wire, far, farPart, farMark: seen ? markOf(far) : undefined };
      at.set(here, [...(at.get(here) ?? []), core]);
    }
  }
  return at;
}
