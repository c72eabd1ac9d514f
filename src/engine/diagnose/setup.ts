import { bitsOf, type InputBits, type Settings, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** How far safe isolation has come. Pairs are those of `DEAD_PAIRS`. */
export interface Proof {
  /** Ids of the supplies that were traced: there may be more than one. */
  readonly identified: ReadonlySet<string>;
  readonly locked: boolean;
  /** The tester was proved on a known source before the dead test. */
  readonly tester: boolean;
  /** Pairs tested with a tester that was proved. */
  readonly dead: ReadonlySet<string>;
  readonly testerAgain: boolean;
}

/** The pairs of a dead test (common practice). */
export const DEAD_PAIRS = ['L-N', 'L-E', 'N-E'] as const;
export type DeadPair = (typeof DEAD_PAIRS)[number];

export const NOT_PROVED: Proof = {
  identified: new Set(),
  locked: false,
  tester: false,
  dead: new Set(),
  testerAgain: false,
};

/** Everything about a visit that people do and see, whatever the fault: the same for every candidate. */
export interface Setup {
  readonly system: System;
  /** The wires as the drawing has them. */
  readonly wires: readonly Wire[];
  readonly inputs: InputBits;
  readonly proof: Proof;
  /** Whether the isolation was proved to its end at least once. */
  readonly everProved: boolean;
  /** Ids of parts whose cover is off. */
  readonly open: ReadonlySet<string>;
  /** Wires, as drawn, that are lifted out of their terminals. */
  readonly lifted: readonly Wire[];
  /** Joints made for a test. */
  readonly bridges: readonly Wire[];
  /** Ids of valves whose manual lever is latched. */
  readonly levers: ReadonlySet<string>;
  /** Ids of parts that were renewed. */
  readonly renewed: ReadonlySet<string>;
}

/** A visit as it begins: covers on, nothing proved, with these settings. */
export const arrive = (system: System, wires: readonly Wire[], settings: Settings): Setup => ({
  system,
  wires,
  inputs: bitsOf(system, settings),
  proof: NOT_PROVED,
  everProved: false,
  open: new Set(),
  lifted: [],
  bridges: [],
  levers: new Set(),
  renewed: new Set(),
});

/** Whether any supply is switched on. */
export const energised = ({ system, inputs }: Setup): boolean =>
  system.supplies.some(({ input }) => input < 0 || ((inputs >> input) & 1) === 1);

/** Ids of the supplies that nobody has traced yet. */
export const suppliesLeft = ({ system, proof }: Setup): string[] =>
  system.supplies.map(({ part }) => system.parts[part]!.id).filter((id) => !proof.identified.has(id));

/** Whether every pair was tested for dead. */
export const everyPair = ({ dead }: Proof): boolean => DEAD_PAIRS.every((pair) => dead.has(pair));

/** Whether safe isolation is complete. */
export const provedDead = (setup: Setup): boolean => {
  const { proof } = setup;
  const named = suppliesLeft(setup).length === 0;
  return named && proof.locked && proof.tester && everyPair(proof) && proof.testerAgain;
};
