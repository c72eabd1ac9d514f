import { evaluate, type Live } from '../../engine/circuit/plain.ts';
import {
  alternatives,
  bitsOf,
  type Config,
  type Demand,
  type InputBits,
  type Place,
  type Settings,
  type System,
  supplyOf,
} from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { statesOf } from '../items/states.ts';
import type { Layout } from '../layout.ts';
import type { Random } from '../random.ts';
import { restsFrom } from '../rests.ts';
import type { Level } from '../task.ts';

/** A wired layout in one state, and what is live in it. */
export interface Standing {
  readonly layout: Layout;
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly config: Config;
  readonly live: Live;
}

export const stand = (layout: Layout, wires: readonly Wire[], config: Config): Standing => ({
  layout,
  system: layout.system,
  wires,
  config,
  live: evaluate(layout.system, wires, config),
});

/** The settings in which every supply is on. */
export const suppliesOn = ({ supplies, inputs }: System): Settings =>
  Object.fromEntries(
    supplies.flatMap(({ input }) => {
      const found = inputs[input];
      return found ? [[found.id, found.settings[1]]] : [];
    }),
  );

/** The settings in which one demand, and nothing else, is called. */
export function callOf(system: System, demand: Demand): InputBits {
  const own = system.inputs[supplyOf(system, demand).input];
  const supply = own ? { [own.id]: own.settings[1] } : {};
  return bitsOf(system, { ...suppliesOn(system), ...supply, ...alternatives(demand.when)[0] });
}

/** A wiring to ask about, and what is wrong with it where it is a classic wrong one: on level 3, one in three. */
export function pickWiring(
  { right, wrong }: Layout,
  random: Random,
  level: Level,
): { readonly wires: readonly Wire[]; readonly mistake?: string } {
  if (level < 3 || wrong.length === 0 || random.int(3) > 0) return { wires: random.pick(right).wires };
  const { wires, title } = random.pick(wrong);
  return { wires, mistake: title };
}

/** Whether something is joined to line and to neutral or earth at once: the fuse has blown, and nothing is live. */
export const isShorted = ({ live }: Standing): boolean =>
  live.line.some((line, node) => line && (live.neutral[node] || live.earth[node]));

/** Settings with the supplies on: on level 1 one call, or one with a setting missing; above that any mix. */
export function pickInputs(system: System, random: Random, level: Level): InputBits {
  const on = bitsOf(system, suppliesOn(system));
  if (level === 1 && system.spec.demands.length > 0) {
    const call = callOf(system, random.pick(system.spec.demands));
    const asked = system.inputs.flatMap((_, k) => (((call & ~on) >> k) & 1 ? [k] : []));
    return random.int(3) === 0 && asked.length > 0 ? call & ~(1 << random.pick(asked)) : call;
  }
  return system.inputs.reduce((bits, _, k) => (random.int(5) < 3 ? bits | (1 << k) : bits), on);
}

/**
 * A state in which a wiring can rest, by chance: any place reached from cold where they can all be listed, else one
 * reached by one change from cold. Undefined when there is none with the settings dealt.
 */
export function pickState(
  layout: Layout,
  wires: readonly Wire[],
  random: Random,
  level: Level,
): Standing | undefined {
  const { system } = layout;
  const states = statesOf(system, wires);
  const inputs = pickInputs(system, random, states ? level : 1);
  const places = states?.restsAt(inputs) ?? restsFrom(system, wires, inputs, [0]);
  return places.length === 0 ? undefined : stand(layout, wires, { inputs, place: random.pick(places) });
}

/** The one place in which the valves come to rest from another, or undefined when a race or a hunt leaves it open. */
export function settled(
  system: System,
  wires: readonly Wire[],
  inputs: InputBits,
  from: Place,
): Place | undefined {
  const rests = restsFrom(system, wires, inputs, [from]);
  return rests.length === 1 ? rests[0] : undefined;
}
