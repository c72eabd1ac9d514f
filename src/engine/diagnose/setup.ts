import { bitsOf, type InputBits, type Settings, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** How far safe isolation has come. Pairs are those of `DEAD_PAIRS`. */
export interface Proof {
  readonly locked: boolean;
  readonly tester: boolean;
  readonly dead: ReadonlySet<string>;
  readonly testerAgain: boolean;
}

/** The pairs of a dead test (common practice). */
export const DEAD_PAIRS = ['L-N', 'L-E', 'N-E'] as const;
export type DeadPair = (typeof DEAD_PAIRS)[number];

export const NOT_PROVED: Proof = { locked: false, tester: false, dead: new Set(), testerAgain: false };

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

/** Whether safe isolation is complete. */
export const provedDead = ({ proof }: Setup): boolean =>
  proof.locked && proof.tester && proof.testerAgain && DEAD_PAIRS.every((pair) => proof.dead.has(pair));
