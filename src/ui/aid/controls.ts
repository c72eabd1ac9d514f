import type { Input, Settings, System } from '../../engine/model/system.ts';

/**
 * Ids of the inputs that somebody can set at will: switches, and thermostats with a dial outside. Not what the weather,
 * the water or a trip decides, nor a dial under the cover of a part that also has such a thing.
 */
export function handControls({ parts, inputs }: System): string[] {
  const byHand = ({ settings: [, active] }: Input) => active === 'on' || active === 'calling';
  return inputs.flatMap((input, k) => {
    const part = parts.find(({ slots }) => Object.values(slots).includes(k));
    const siblings = Object.values(part?.slots ?? {}).map((slot) => inputs[slot]);
    return siblings.every((one) => one && byHand(one)) ? [input.id] : [];
  });
}

/** Whether any supply is on with these settings. */
export const isOnWith = ({ supplies, inputs }: System, settings: Settings): boolean =>
  supplies.some(({ input }) => {
    const found = inputs[input];
    return !found || settings[found.id] === found.settings[1];
  });

/** The same settings with every supply off (0) or on (1). */
export const withSupplies = ({ supplies, inputs }: System, settings: Settings, which: 0 | 1): Settings => ({
  ...settings,
  ...Object.fromEntries(
    supplies.flatMap(({ input }) => {
      const found = inputs[input];
      return found ? [[found.id, found.settings[which]]] : [];
    }),
  ),
});

/** The same settings with one input changed over. Throws a RangeError when the system has no such input. */
export function changedOver({ inputs }: System, settings: Settings, id: string): Settings {
  const [rest, active] = inputs.find((input) => input.id === id)?.settings ?? [];
  if (rest === undefined || active === undefined) throw new RangeError(`no control "${id}"`);
  return { ...settings, [id]: settings[id] === active ? rest : active };
}
