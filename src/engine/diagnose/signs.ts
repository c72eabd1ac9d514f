import type { InputBits, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import type { Bench } from './bench.ts';
import type { Complaint } from './callout.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { ask, type Outcome, type Test } from './evidence.ts';
import { isAskedFor, isHeat } from './family.ts';
import { arrive, type Setup } from './setup.ts';
import { activeSettings, situations } from './situations.ts';
import { enter, follow, type World } from './world.ts';

/** Something that anybody in the house can notice, and whether it is as it should be. */
export interface Sign extends Complaint {
  readonly part: string;
  readonly outcome: boolean;
  readonly wrong: boolean;
  /** Whether it is about heat, and not only about what runs. */
  readonly heat: boolean;
  /** Heat: it is called for; else: anything is called. */
  readonly called: boolean;
}

/** Settings one after the other, from cold. */
export type Path = readonly InputBits[];

/** What a customer can notice: what gets warm, and which boilers, pumps and heaters run. A valve's place is not seen. */
const noticed = ({ parts }: System): (Test & { readonly kind: 'works' | 'warms' })[] =>
  parts.flatMap(({ id, kind }) => [
    ...(kind.heat === 'takes' ? [{ kind: 'warms', part: id } as const] : []),
    ...(kind.work ? [{ kind: 'works', part: id } as const] : []),
  ]);

/** How a candidate's system stands after settings one after the other, from cold. */
export function walk(bench: Bench, cold: Setup, candidate: Candidate, [first, ...others]: Path): World {
  const start = enter(bench, { ...cold, inputs: first ?? cold.inputs }, candidate);
  return others.reduce((world, inputs) => follow(bench, { ...cold, inputs }, world), start);
}

/** What the healthy system shows on a path, by its settings: worked out once for all faults. */
const healthy = new WeakMap<readonly Wire[], Map<string, (readonly Outcome[])[]>>();

function rightAt(bench: Bench, cold: Setup, path: Path, tests: readonly Test[]): (readonly Outcome[])[] {
  const known = healthy.get(cold.wires) ?? new Map<string, (readonly Outcome[])[]>();
  healthy.set(cold.wires, known);
  const key = `${bench.system.spec.id} ${path}`;
  const before = known.get(key);
  if (before) return before;
  const { stands } = walk(bench, cold, candidateOf(bench.system, []), path);
  const found = tests.map((test) => stands.map(ask(cold, test)));
  known.set(key, found);
  return found;
}

/** All that can be noticed on one path. Of the ways in which the faulty system may stand, the seed takes one. */
function signsOn(bench: Bench, cold: Setup, fault: Candidate, path: Path, seed: number): Sign[] {
  const { system } = bench;
  const tests = noticed(system);
  const right = rightAt(bench, cold, path, tests);
  const { stands } = walk(bench, cold, fault, path);
  const stand = stands[seed % stands.length]!;
  const settings = activeSettings(system, path.at(-1)!);
  const after = path.length > 1 ? { after: activeSettings(system, path[0]!) } : {};
  return tests.map((test, k): Sign => {
    const outcome = ask(cold, test)(stand) as boolean;
    return {
      settings,
      ...after,
      test,
      outcome,
      part: test.part,
      wrong: !right[k]!.includes(outcome),
      heat: isHeat(system, test),
      called: isAskedFor(system, settings, test),
    };
  });
}

/** All that can be noticed of a fault, simplest settings first; what only shows after other settings comes in when nothing else shows. */
export function signsOf(bench: Bench, wires: readonly Wire[], fault: Candidate, seed: number): Sign[] {
  const { system } = bench;
  const cold = arrive(system, wires, {});
  const simple = situations(system);
  const plain = simple.flatMap((inputs) => signsOn(bench, cold, fault, [inputs], seed));
  if (plain.some(({ wrong }) => wrong)) return plain;
  const few = situations(system, false);
  const later = few.flatMap((before) =>
    few
      .filter((now) => now !== before)
      .flatMap((now) => signsOn(bench, cold, fault, [before, now], seed).filter(({ wrong }) => wrong)),
  );
  return [...later, ...plain];
}
