import { type Act, perform } from './act.ts';
import type { Bench } from './bench.ts';
import type { Breach } from './breach.ts';
import type { Callout } from './callout.ts';
import { type Outcome, outcomeAt, type Test } from './evidence.ts';
import { arrive, type Setup } from './setup.ts';
import { enter, follow, refuse, type Stand, sameCircuit, type World } from './world.ts';

/** An act of a visit and what came of it. */
export interface Entry {
  readonly act: Act;
  /** In the unit of `costs`. */
  readonly cost: number;
  readonly breaches: readonly Breach[];
  /** What a test showed, or what the tester showed on a pair of the dead test. */
  readonly outcome?: Outcome;
}

/** A visit under way: what has been done, and how the faulty system stands now. */
export interface Visit {
  readonly setup: Setup;
  /** The faulty system, standing in one way only. */
  readonly truth: World;
  readonly entries: readonly Entry[];
}

/** Of the ways to stand, the one that the seed takes. */
const settled = (world: World, seed: number): World => {
  const { stands } = world;
  return stands.length < 2 ? world : { ...world, stands: [stands[Math.abs(seed) % stands.length]!] };
};

/** The faulty system as it stands: one way, always. */
export const standOf = ({ truth }: Visit): Stand => truth.stands[0]!;

/** Arrives at the door. */
export function begin(bench: Bench, { system, wires, found, fault, seed }: Callout): Visit {
  const setup = arrive(system, wires, found);
  return { setup, truth: settled(enter(bench, setup, fault), seed), entries: [] };
}

/** Does one thing more. Throws an Error for an act that the system does not allow for: see `perform`. */
export function go(bench: Bench, { seed }: Callout, visit: Visit, act: Act): Visit {
  const { next, cost, breaches, newFuse } = perform(visit.setup, act);
  const test = observed(visit.setup, act);
  const outcome = test && outcomeAt(visit.setup, standOf(visit), test);
  const entry: Entry = { act, cost, breaches, ...(outcome !== undefined && { outcome }) };
  const entries = [...visit.entries, entry];
  if (sameCircuit(visit.setup, next)) return { ...visit, setup: next, entries };
  const truth = settled((newFuse ? refuse : follow)(bench, next, visit.truth), seed + entries.length);
  return { setup: next, truth, entries };
}

/**
 * The test that an act puts to the system: its own, or the tester on a pair of the dead test. That is made at every
 * supply; what is told is the one that shows something, if one is still on. Undefined for what only acts.
 */
export function observed({ system, inputs }: Setup, act: Act): Test | undefined {
  if (act.do === 'test') return act.test;
  if (act.do !== 'dead-test') return undefined;
  const on = system.supplies.find(({ input }) => input < 0 || ((inputs >> input) & 1) === 1);
  const { line, neutral, earth } = (on ?? system.supply).out;
  const at = { L: line, N: neutral, E: earth };
  const [a, b] = act.pair.split('-').map((pole) => system.nodes[at[pole as keyof typeof at]]!);
  return { kind: 'reads', instrument: 'tester', between: [a!, b!] };
}

/** A whole visit from its acts. */
export const replay = (bench: Bench, callout: Callout, acts: readonly Act[]): Visit =>
  acts.reduce((visit, act) => go(bench, callout, visit, act), begin(bench, callout));
