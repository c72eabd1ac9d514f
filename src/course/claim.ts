import { atWork, evaluate, partsAtWork } from '../engine/circuit/plain.ts';
import { failPlace, failSystem } from '../engine/faults/apply.ts';
import type { Failure } from '../engine/faults/failure.ts';
import { judgeFor } from '../engine/grade/judge-for.ts';
import {
  bitsOf,
  type Config,
  type Place,
  positionOf,
  type Settings,
  type System,
  settingsOf,
} from '../engine/model/system.ts';
import { type Wire, wireKey } from '../engine/model/wiring.ts';
import { openPaths } from '../engine/plant/paths.ts';
import type { Layout } from './layout.ts';
import { restsFrom } from './rests.ts';

/** What a claim says comes of it; each may be left out, and what is given must hold wherever the valves can come to rest. */
export interface Outcome {
  /** Whether any boiler fires, any pump runs. */
  readonly fires?: boolean;
  readonly pumps?: boolean;
  /** Exactly these parts get heat from a boiler. */
  readonly heats?: readonly string[];
  /** These parts are at work; these are not. */
  readonly works?: readonly string[];
  readonly idle?: readonly string[];
  /** Where parts that move come to rest. */
  readonly at?: Readonly<Record<string, string>>;
  /** Terminals joined to line; terminals that are not. */
  readonly live?: readonly string[];
  readonly dead?: readonly string[];
  /** Whether the checker rejects the wiring, and ids of rules that are among those it breaks. */
  readonly rejected?: boolean;
  readonly breaks?: readonly string[];
}

/** A statement of a lesson about a circuit, in a form that the engine can play. */
export interface Claim {
  /** Words that stand in the lesson's text. */
  readonly says: string;
  readonly layout: string;
  /** Id of a right or wrong wiring; the first right one unless told. */
  readonly wiring?: string;
  /** Wires that are lifted from it, where the text speaks of a missing one. */
  readonly lift?: readonly Wire[];
  /** Failures, each `part/failure`. */
  readonly fail?: readonly string[];
  /** Changes of settings from cold, one after the other; the valves come to rest after each. */
  readonly moves?: readonly Settings[];
  readonly then: Outcome;
}

/** A name in a claim that the layout does not have, and what it could have been. */
export class UnknownName extends RangeError {
  readonly expected: string;
  readonly found: string;

  constructor(what: string, name: string, known: Iterable<string>) {
    const expected = `a ${what} of the layout (${[...known].join(', ')})`;
    const found = `"${name}"`;
    super(`expected ${expected}, found ${found}`);
    this.expected = expected;
    this.found = found;
  }
}

/** The wires of one of a layout's wirings, the first right one unless told. */
export function wiresOf(layout: Layout, wiring?: string): readonly Wire[] {
  const all = [...layout.right, ...layout.wrong];
  const found = wiring === undefined ? all[0] : all.find(({ id }) => id === wiring);
  if (!found)
    throw new UnknownName(
      'wiring',
      wiring ?? '',
      all.map(({ id }) => id),
    );
  return found.wires;
}

/** Failures by name, `part/failure`. */
export const failuresOf = (system: System, names: readonly string[]): Failure[] =>
  names.map((name) => {
    const known = system.parts.flatMap(({ id, kind }, part) =>
      (kind.failures ?? []).map((spec) => ({ name: `${id}/${spec.id}`, part, spec })),
    );
    const found = known.find((failure) => failure.name === name);
    if (!found)
      throw new UnknownName(
        'failure',
        name,
        known.map((failure) => failure.name),
      );
    return { part: found.part, spec: found.spec };
  });

/**
 * Every state that a series of moves can end in, from cold; none when the system hunts.
 * @param start where the mechanisms stand at first: a part that has failed stuck is not at rest
 * @throws UnknownName for an input or a setting that the system does not have
 */
export function statesAfter(
  system: System,
  wires: readonly Wire[],
  moves: readonly Settings[],
  start: Place = 0,
): Config[] {
  let now: Settings = settingsOf(system, 0);
  let places = restsFrom(system, wires, 0, [start]);
  for (const move of moves) {
    for (const [id, setting] of Object.entries(move)) {
      const input = system.inputs.find((known) => known.id === id);
      if (!input)
        throw new UnknownName(
          'switch',
          id,
          system.inputs.map((known) => known.id),
        );
      if (!input.settings.includes(setting)) throw new UnknownName('setting', setting, input.settings);
    }
    now = { ...now, ...move };
    places = restsFrom(system, wires, bitsOf(system, now), places);
  }
  return places.map((place) => ({ inputs: bitsOf(system, now), place }));
}

/**
 * What in a claim does not hold, in words; empty when all of it does.
 * @throws UnknownName for a name that the layout does not have
 */
export function playClaim(layout: Layout, claim: Claim): string[] {
  const lifted = new Set((claim.lift ?? []).map(wireKey));
  const all = wiresOf(layout, claim.wiring);
  for (const wire of claim.lift ?? [])
    if (!all.some((other) => wireKey(other) === wireKey(wire)))
      throw new UnknownName('wire', wireKey(wire), all.map(wireKey));
  const wires = all.filter((wire) => !lifted.has(wireKey(wire)));
  const { then } = claim;
  const troubles: string[] = [];
  if (then.rejected !== undefined || then.breaks) {
    const { accepted, findings } = judgeFor(layout.system).judge(wires);
    if (then.rejected === accepted) troubles.push(`the checker ${accepted ? 'accepts' : 'rejects'} it`);
    for (const rule of then.breaks ?? [])
      if (!findings.some(({ id }) => id === rule))
        troubles.push(`it breaks ${findings.map(({ id }) => id).join(', ') || 'no rule'}, not ${rule}`);
  }
  const failures = failuresOf(layout.system, claim.fail ?? []);
  const system = failSystem(layout.system, failures);
  const states = statesAfter(system, wires, claim.moves ?? [], failPlace(system, failures, 0));
  if (states.length === 0) troubles.push('the valves never come to rest');
  for (const config of states) troubles.push(...differences(system, wires, config, then));
  return [...new Set(troubles)];
}

const names = (ids: Iterable<string>): string => [...ids].sort().join(', ') || 'nothing';

/** What an outcome says of one state and does not hold, in words. @throws UnknownName */
export function differences(system: System, wires: readonly Wire[], config: Config, then: Outcome): string[] {
  const live = evaluate(system, wires, config);
  const working = partsAtWork(system, live);
  const isLive = (terminal: string): boolean => {
    const node = system.nodeOf.get(terminal);
    if (node === undefined)
      throw new UnknownName('terminal', terminal, system.nodes.slice(0, system.terminals));
    return live.line[node] === true;
  };
  const part = (id: string) => {
    const found = system.parts.find((known) => known.id === id);
    if (found) return found;
    throw new UnknownName(
      'part',
      id,
      system.parts.map((known) => known.id),
    );
  };
  const troubles: string[] = [];
  const fires = atWork(system, live, 'fires');
  const pumps = atWork(system, live, 'pumps');
  if (then.fires !== undefined && then.fires !== fires) troubles.push(`the boiler fires: ${fires}`);
  if (then.pumps !== undefined && then.pumps !== pumps) troubles.push(`the pump runs: ${pumps}`);
  if (then.heats) {
    const heats = names(fires ? openPaths(system, config.place) : []);
    if (heats !== names(then.heats)) troubles.push(`heat goes to ${heats}`);
  }
  for (const id of then.works ?? []) if (!working.has(part(id).id)) troubles.push(`${id} does not work`);
  for (const id of then.idle ?? []) if (working.has(part(id).id)) troubles.push(`${id} works`);
  for (const [id, position] of Object.entries(then.at ?? {})) {
    const known = part(id).kind.motion?.positions ?? [];
    if (!known.includes(position)) throw new UnknownName(`position of ${id}`, position, known);
    const found = positionOf(system, part(id), config.place);
    if (found !== position) troubles.push(`${id} rests at ${found}`);
  }
  for (const terminal of then.live ?? []) if (!isLive(terminal)) troubles.push(`${terminal} is dead`);
  for (const terminal of then.dead ?? []) if (isLive(terminal)) troubles.push(`${terminal} is live`);
  return troubles;
}
