import { alternatives, bitsOf, type InputBits, type Settings, type System } from '../model/system.ts';

/** A bit for each input that stands at its active setting when every supply is on and all else is at rest. */
export const suppliesOn = ({ supplies }: System): InputBits =>
  supplies.reduce((bits, { input }) => (input < 0 ? bits : bits | (1 << input)), 0);

/** Settings of each call by itself, supplies on. */
export const calls = (system: System): InputBits[] => [
  ...new Set(
    system.spec.demands.flatMap(({ when }) =>
      alternatives(when).map((settings) => bitsOf(system, settings) | suppliesOn(system)),
    ),
  ),
];

/** Inputs that nobody sets by hand to their active setting: a cut-out that trips. */
export const trips = ({ inputs }: System): InputBits =>
  inputs.reduce((bits, { settings }, k) => (settings[1] === 'tripped' ? bits | (1 << k) : bits), 0);

/**
 * Settings worth trying with the supplies on, fewest active ones first: all at rest; each call; each call with one thing
 * that it needs missing; with `together` also calls two by two, and all.
 */
export function situations(system: System, together = true): InputBits[] {
  const rest = suppliesOn(system);
  const each = calls(system);
  const short = each.flatMap((bits) =>
    system.inputs.flatMap((_, k) => ((bits & ~rest & (1 << k)) === 0 ? [] : [bits & ~(1 << k)])),
  );
  const both = together ? each.flatMap((a, k) => each.slice(k + 1).map((b) => a | b)) : [];
  const all = together ? [each.reduce((a, b) => a | b, rest)] : [];
  return [...new Set([rest, ...each, ...short, ...both, ...all])].sort((a, b) => count(a) - count(b));
}

/** How many settings are active. */
const count = (bits: InputBits): number => {
  let ones = 0;
  for (let left = bits; left !== 0; left &= left - 1) ones++;
  return ones;
};

/** The settings that are active, by name. */
export const activeSettings = ({ inputs }: System, bits: InputBits): Settings =>
  Object.fromEntries(inputs.flatMap(({ id, settings }, k) => ((bits >> k) & 1 ? [[id, settings[1]]] : [])));

/** What to set to come from some settings to others: only what differs. */
export const changes = ({ inputs }: System, from: InputBits, to: InputBits): Settings =>
  Object.fromEntries(
    inputs.flatMap(({ id, settings }, k) =>
      ((from ^ to) >> k) & 1 ? [[id, settings[((to >> k) & 1) as 0 | 1]]] : [],
    ),
  );
