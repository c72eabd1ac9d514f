import type { Settings, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { type Candidate, candidateOf, singleCandidates, strayCandidates } from './candidate.ts';
import type { Observation } from './evidence.ts';

/** What a customer has noticed: what somebody without tools sees, with these settings, reached from cold. */
export interface Complaint extends Observation {
  readonly settings: Settings;
  /** Settings that came before these, where what came before matters. */
  readonly after?: Settings;
}

/** A system as somebody finds it, with a fault that they cannot see. */
export interface Callout {
  readonly system: System;
  /** The wires as the drawing has them. */
  readonly wires: readonly Wire[];
  readonly fault: Candidate;
  /** What the customer has noticed. Each holds with the fault, and one at least would not without. */
  readonly complaints: readonly Complaint[];
  /** Settings on arrival. */
  readonly found: Settings;
  /** Decides which way the system stands where it may stand in several. */
  readonly seed: number;
}

/**
 * Everything that may be wrong, as far as a visit asks: every single fault, every link too many, chosen double faults,
 * and nothing at all. Ids are unique.
 */
export const allCandidates = (
  system: System,
  wires: readonly Wire[],
  doubles: readonly Candidate[] = [],
): Candidate[] => {
  const all = [
    candidateOf(system, []),
    ...singleCandidates(system, wires),
    ...strayCandidates(system, wires),
    ...doubles,
  ];
  return [...new Map(all.map((one) => [one.id, one])).values()];
};
