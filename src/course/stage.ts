import { failPlace, failSystem } from '../engine/faults/apply.ts';
import { judgeFor } from '../engine/grade/judge-for.ts';
import {
  alternatives,
  bitsOf,
  type Config,
  type Demand,
  type Place,
  type Settings,
  type System,
  settingsOf,
} from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';
import { differences, failuresOf, type Outcome, UnknownName, wiresOf } from './claim.ts';
import type { Layout } from './layout.ts';
import { restsFrom } from './rests.ts';

/** The drawings that a stage can show. */
export const STAGE_VIEWS = ['strip', 'circuit', 'pipework'] as const;
export type StageView = (typeof STAGE_VIEWS)[number];

/** One step of a stage script: a caption, and what is done before it is read. */
export interface StageStep {
  /** The caption. */
  readonly says: string;
  /** Settings that change; the others stay as they are. */
  readonly set?: Settings;
  /** Everything that has failed from here on, each `part/failure`; an empty list mends it all. */
  readonly fail?: readonly string[];
  /** Id of a demand: it is called, and the live is followed with captions of its own. */
  readonly follow?: string;
  /** Parts and terminals in the spotlight. */
  readonly spot?: readonly string[];
  /** The drawings from here on. */
  readonly view?: readonly StageView[];
  /** What must hold wherever the valves can come to rest. */
  readonly expect?: Outcome;
}

/** A script for a class or a recording. */
export interface StageScript {
  readonly title: string;
  /** Id of the layout. */
  readonly system: string;
  /** Id of a right or wrong wiring; the first right one unless told. `wires` is given instead of it. */
  readonly wiring?: string;
  readonly wires?: readonly Wire[];
  readonly view: readonly StageView[];
  readonly steps: readonly StageStep[];
}

/** A step as it stands on the stage. */
export interface StageState {
  /** The system with what has failed in it. */
  readonly system: System;
  readonly failures: readonly string[];
  /** The state that is shown: of several rests the one that is reached in the fewest moves. */
  readonly config: Config;
  /** Every state in which the valves can come to rest; empty when they hunt. */
  readonly states: readonly Config[];
  /** The call that is followed. */
  readonly follow?: Demand;
  readonly view: readonly StageView[];
}

/** The wires of a script on its layout. @throws UnknownName for a wiring that the layout does not have */
export const stageWires = (layout: Layout, script: Pick<StageScript, 'wires' | 'wiring'>): readonly Wire[] =>
  script.wires ?? wiresOf(layout, script.wiring);

/** The switches of the supplies, on. */
const supplied = (system: System): Settings =>
  Object.fromEntries(
    system.supplies.flatMap(({ input }) => {
      const given = system.inputs[input];
      return given ? [[given.id, given.settings[1]]] : [];
    }),
  );

/** What a call sets: the supply on, and the first of the ways to make it. */
export const callSettings = (system: System, demand: Demand): Settings => ({
  ...supplied(system),
  ...alternatives(demand.when)[0],
});

/** Whether the system has these switches and settings. @throws UnknownName */
function settingsFit(system: System, set: Settings): true {
  for (const [id, setting] of Object.entries(set)) {
    const input = system.inputs.find((known) => known.id === id);
    if (!input)
      throw new UnknownName(
        'switch',
        id,
        system.inputs.map((known) => known.id),
      );
    if (!input.settings.includes(setting)) throw new UnknownName('setting', setting, input.settings);
  }
  return true;
}

/** Where the mechanisms are after a failure strikes: those that it holds are where it holds them. */
const strike = (
  system: System,
  failures: Parameters<typeof failPlace>[1],
  places: readonly Place[],
): Place[] => [...new Set(places.map((place) => failPlace(system, failures, place)))];

/**
 * A script's steps from cold, one after the other: each goes on from where the valves came to rest before.
 * @param report told of every name that the layout does not have, with the step and the key it stands in; the step then
 *   goes on without it. Without it the name is thrown.
 */
export function playStage(
  healthy: System,
  wires: readonly Wire[],
  script: Pick<StageScript, 'steps' | 'view'>,
  report?: (step: number, key: keyof StageStep, error: UnknownName) => void,
): StageState[] {
  let system = healthy;
  let failures: readonly string[] = [];
  let now: Settings = settingsOf(system, 0);
  let places = restsFrom(system, wires, 0, [0]);
  let view = script.view;
  return script.steps.map((step, k): StageState => {
    const named = <T>(key: keyof StageStep, look: () => T, otherwise: T): T => {
      try {
        return look();
      } catch (error) {
        if (!report || !(error instanceof UnknownName)) throw error;
        report(k, key, error);
        return otherwise;
      }
    };
    if (step.fail) {
      const wanted = step.fail;
      const found = named('fail', () => failuresOf(healthy, wanted), []);
      failures = wanted;
      system = failSystem(healthy, found);
      places = strike(healthy, found, places);
    }
    const follow =
      step.follow === undefined
        ? undefined
        : named('follow', () => demandOf(healthy, step.follow ?? ''), undefined);
    const set = step.set ?? {};
    const fits = named('set', () => settingsFit(healthy, set), false);
    now = { ...now, ...(follow && callSettings(healthy, follow)), ...(fits ? set : {}) };
    for (const name of step.spot ?? []) named('spot', () => spotOf(healthy, name), undefined);
    view = step.view ?? view;
    const inputs = bitsOf(system, now);
    const rests = restsFrom(system, wires, inputs, places);
    places = rests.length > 0 ? rests : places;
    const config = { inputs, place: places[0] ?? 0 };
    const states = rests.map((place) => ({ inputs, place }));
    return { system, failures, config, states, view, ...(follow && { follow }) };
  });
}

/** A demand by its id. @throws UnknownName */
export function demandOf(system: System, id: string): Demand {
  const { demands } = system.spec;
  const found = demands.find((demand) => demand.id === id);
  if (found) return found;
  throw new UnknownName(
    'call',
    id,
    demands.map((demand) => demand.id),
  );
}

/** Checks a name that is put in the spotlight: a part or a terminal of the layout. @throws UnknownName */
function spotOf(system: System, name: string): void {
  const parts = system.parts.map(({ id }) => id);
  if (name.includes('/')) {
    const node = system.nodeOf.get(name);
    const own = system.nodes
      .slice(0, system.terminals)
      .filter((one) => one.startsWith(`${name.split('/')[0]}/`));
    if (node === undefined || node >= system.terminals)
      throw new UnknownName('terminal', name, own.length > 0 ? own : parts);
  } else if (!parts.includes(name)) throw new UnknownName('part', name, parts);
}

/** What a step expects and does not hold, in words. @throws UnknownName for a name that the layout does not have */
export function expectTroubles(
  wires: readonly Wire[],
  { system, states }: StageState,
  expected: Outcome,
): string[] {
  const troubles = states.flatMap((config) => differences(system, wires, config, expected));
  if (expected.rejected !== undefined || expected.breaks) {
    const { accepted, findings } = judgeFor(system).judge(wires);
    if (expected.rejected === accepted) troubles.push(`the checker ${accepted ? 'accepts' : 'rejects'} it`);
    for (const rule of expected.breaks ?? [])
      if (!findings.some(({ id }) => id === rule))
        troubles.push(`it breaks ${findings.map(({ id }) => id).join(', ') || 'no rule'}, not ${rule}`);
  }
  return [...new Set(troubles)];
}
