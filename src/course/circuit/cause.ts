import { type Config, partState, type System, settingsOf } from '../../engine/model/system.ts';
import { list, sayPosition, sayStanding } from '../../engine/rules/words.ts';

/** What a contact stands as it does because of: inputs of its part, by number, and its mechanism. */
interface Cause {
  readonly inputs: readonly number[];
  readonly mechanism: boolean;
}

/**
 * Why a contact is made, or is open: the position of its mechanism, where another would change it; and the inputs that
 * would change it, each by itself or with others that are needed too. Inputs of another channel are left out.
 */
export function causeOf(system: System, contact: number, config: Config): Cause {
  const { part = -1, spec } = system.contacts[contact] ?? {};
  const owner = system.parts[part];
  if (!owner || !spec) return { inputs: [], mechanism: false };
  const now = partState(system, owner, config);
  const closed = spec.closed(now);
  const slots = Object.entries(owner.slots);
  /** Whether the contact changes with some of the inputs the other way; bit k stands for slot k. */
  const changes = (some: number): boolean => {
    const setting = { ...now.setting };
    slots.forEach(([slot, input], k) => {
      const other = system.inputs[input]?.settings.find((word) => word !== now.setting[slot]);
      if ((some >> k) & 1 && other !== undefined) setting[slot] = other;
    });
    return spec.closed({ ...now, setting }) !== closed;
  };
  const positions = system.movers[owner.mover]?.positions ?? [];
  const mechanism = positions.some((position) => spec.closed({ ...now, position }) !== closed);
  const sets = Array.from({ length: 1 << slots.length }, (_, some) => some).filter(changes);
  const enough = sets.filter((some) => !sets.some((less) => less !== some && (less & some) === less));
  // With a mechanism in it, only what would change the contact by itself is told beside it.
  const alone = enough.filter((some) => (some & (some - 1)) === 0);
  const told = (mechanism ? alone : enough).reduce((all, some) => all | some, 0);
  return { inputs: slots.flatMap(([, input], k) => ((told >> k) & 1 ? [input] : [])), mechanism };
}

/** Why a contact is as it is, to follow “because”: “heating is off”, “the room thermostat is satisfied”. */
export function sayCause(system: System, contact: number, config: Config): string {
  const { part = -1 } = system.contacts[contact] ?? {};
  const { id = '', slots = {}, mover = -1 } = system.parts[part] ?? {};
  const { inputs, mechanism } = causeOf(system, contact, config);
  // A part with one input is told by its own name.
  const only = Object.keys(slots).length === 1 && mover < 0;
  if (only || (inputs.length === 0 && !mechanism)) return sayStanding(system, part, config);
  const now = settingsOf(system, config.inputs);
  return list([
    ...(mechanism ? [sayPosition(system, id, config)] : []),
    ...inputs.flatMap((k) => {
      const input = system.inputs[k];
      return input ? [`${input.label.toLowerCase()} is ${now[input.id]}`] : [];
    }),
  ]);
}

/** The same in brackets after the part’s name, which is then not said again: “the room thermostat (calling)”. */
export function sayThrough(system: System, contacts: readonly number[], config: Config): string {
  const { part = -1 } = system.contacts[contacts[0] ?? -1] ?? {};
  const name = `the ${system.parts[part]?.name.toLowerCase()}`;
  const moves = (system.parts[part]?.mover ?? -1) >= 0;
  if (!moves && Object.keys(system.parts[part]?.slots ?? {}).length === 0) return name;
  const why = [...new Set(contacts.map((contact) => sayCause(system, contact, config)))];
  const brief = why.map((says) => (says.startsWith(`${name} is `) ? says.slice(name.length + 4) : says));
  // No brackets in brackets.
  return `${name} (${list(brief).replace(/ \(([^)]*)\)/g, ': $1')})`;
}
