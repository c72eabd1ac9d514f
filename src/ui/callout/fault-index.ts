import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { System } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';

/** A wire landed wrong: which end left its terminal, and where that end is now. */
export interface Landing {
  readonly end: string;
  readonly to: string;
  readonly candidate: Candidate;
}

/** All that may be wrong with one wire of the drawing. */
export interface WireFaults {
  readonly wire: Wire;
  readonly broken: Candidate | undefined;
  readonly landings: readonly Landing[];
}

/** Everything that may be wrong, sorted the way a person would look it up. */
export interface FaultIndex {
  /** By part id: the part itself has failed. */
  readonly parts: ReadonlyMap<string, readonly Candidate[]>;
  /** By wire key. */
  readonly wires: ReadonlyMap<string, WireFaults>;
  /** One link too many. */
  readonly links: readonly { readonly link: Wire; readonly candidate: Candidate }[];
  /** Two things at once, or two cores that changed places. */
  readonly several: readonly Candidate[];
  readonly nothing: Candidate | undefined;
}

/** Sorts candidates for looking up. Each is found in one place. */
export function indexFaults(system: System, candidates: readonly Candidate[]): FaultIndex {
  const parts = new Map<string, Candidate[]>();
  const wires = new Map<string, { wire: Wire; broken: Candidate | undefined; landings: Landing[] }>();
  const links: { link: Wire; candidate: Candidate }[] = [];
  const several: Candidate[] = [];
  let nothing: Candidate | undefined;
  const at = (wire: Wire) => {
    const key = wireKey(wire);
    const found = wires.get(key) ?? { wire, broken: undefined, landings: [] };
    wires.set(key, found);
    return found;
  };
  for (const candidate of candidates) {
    const { failures, misplaced, strays } = candidate;
    const count = failures.length + misplaced.length + strays.length;
    const [failure] = failures;
    const [moved] = misplaced;
    const [link] = strays;
    if (count === 0) nothing = candidate;
    else if (count > 1) several.push(candidate);
    else if (link) links.push({ link, candidate });
    else if (moved) {
      const { wire, landed } = moved;
      const end = wire.find((one) => !landed.includes(one));
      const to = landed.find((one) => !wire.includes(one));
      if (end && to) at(wire).landings.push({ end, to, candidate });
      else several.push(candidate);
    } else if (failure && 'wire' in failure) at(failure.wire).broken = candidate;
    else if (failure) {
      const id = system.parts[failure.part]?.id ?? '';
      parts.set(id, [...(parts.get(id) ?? []), candidate]);
    }
  }
  return { parts, wires, links, several, nothing };
}
