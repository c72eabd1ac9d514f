import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { SystemSpec } from '../../../src/engine/model/system.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { must } from './must.ts';

interface Given extends SystemSpec {
  readonly references: readonly { readonly id: string; readonly wires: Readonly<Record<string, string[]>> }[];
  readonly mistakes: readonly {
    readonly id: string;
    readonly title: string;
    readonly from: string;
    readonly lift: readonly Wire[];
    readonly land: readonly Wire[];
    readonly breaks: readonly string[];
    readonly advises?: readonly string[];
  }[];
}

const file = new URL('../../../content/systems/unvented-three-port.yaml', import.meta.url);
const given: Given = parse(readFileSync(file, 'utf8'));

/** The system of the job `unvented-three-port`, and its judge. */
export const system = buildSystem(given, findKind);
export const judge = makeJudge(system);

/** Wires from a landing map. */
export const landed = (map: Readonly<Record<string, readonly string[]>>): Wire[] =>
  Object.entries(map).flatMap(([end, others]) => others.map((other): Wire => [end, other]));

/** A wiring with some wires lifted and others landed. Fails when a wire to lift is not there. */
export function rewired(wires: readonly Wire[], lift: readonly Wire[], land: readonly Wire[] = []): Wire[] {
  const lifted = new Set(lift.map(wireKey));
  const kept = wires.filter((wire) => !lifted.has(wireKey(wire)));
  if (kept.length !== wires.length - lifted.size) throw new Error(`not all there: ${[...lifted].join(', ')}`);
  return [...kept, ...land];
}

export const references = given.references.map(({ id, wires }) => ({ id, wires: landed(wires) }));
export const reference = (id: string): Wire[] =>
  must(
    references.find((one) => one.id === id),
    `reference ${id}`,
  ).wires;

/** The first right wiring: cut-out after the thermostat. */
export const right = reference('cut-out-after-thermostat');

export const mistakes = given.mistakes.map(({ advises = [], ...mistake }) => ({
  ...mistake,
  advises,
  wires: rewired(reference(mistake.from), mistake.lift, mistake.land),
}));
export const mistake = (id: string) =>
  must(
    mistakes.find((one) => one.id === id),
    `mistake ${id}`,
  );

/** Ids of the rules of severity danger or fault that a wiring breaks, in order of name. */
export const broken = (wires: readonly Wire[]): string[] =>
  judge
    .judge(wires)
    .findings.filter(({ severity }) => severity !== 'advice')
    .map(({ id }) => id)
    .sort();

/** Ids of the advice a wiring earns. */
export const advice = (wires: readonly Wire[]): string[] =>
  judge
    .judge(wires)
    .findings.filter(({ severity }) => severity === 'advice')
    .map(({ id }) => id)
    .sort();
