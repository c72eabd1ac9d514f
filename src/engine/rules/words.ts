import {
  alternatives,
  type Config,
  holds,
  partOf,
  positionOf,
  type System,
  settingsOf,
} from '../model/system.ts';
import type { StateView } from './view.ts';

/** "a", "a and b", "a, b and c". */
export const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A terminal as a person says it: "room thermostat CALL", "terminal 7". */
export function sayNode(system: System, node: number): string {
  const part = partOf(system, node);
  const name = system.nodes[node]!.slice(part.id.length + 1);
  if (node >= system.terminals) return `the ${name.slice(1, -1)} inside the ${part.name.toLowerCase()}`;
  return part.kind.kind === 'strip' ? `terminal ${name}` : `${part.name.toLowerCase()} ${name}`;
}

/** How a part stands: "the three-port valve is at mid", or "" for a part that does not move. */
export function sayPosition(system: System, partId: string, { place }: Config): string {
  const part = system.parts.find(({ id }) => id === partId)!;
  const position = positionOf(system, part, place);
  const words = system.spec.parts[partId]!.positions?.[position] ?? position;
  return position === '' ? '' : `the ${part.name.toLowerCase()} is ${words}`;
}

/** Why a part's contact is as it is: where its mechanism stands, or what its inputs are set to. */
export function sayStanding(system: System, part: number, config: Config): string {
  const { id, name, slots } = system.parts[part]!;
  const position = sayPosition(system, id, config);
  if (position) return position;
  const now = settingsOf(system, config.inputs);
  const inputs = Object.values(slots).map((slot) => system.inputs[slot]!);
  if (inputs.length === 1) return `the ${name.toLowerCase()} is ${now[inputs[0]!.id]}`;
  return list(inputs.map((input) => `${input.label.toLowerCase()} is ${now[input.id]}`));
}

/** The settings that matter: those away from cold, and those that stop a call already half made. */
export function saySettings({ system, config }: StateView): string {
  const now = settingsOf(system, config.inputs);
  const said = new Set<string>();
  for (const input of system.inputs) {
    const isSupply = input === system.inputs[system.supply.input];
    if (now[input.id] === input.settings[1] && !isSupply) said.add(input.id);
  }
  for (const when of system.spec.demands.flatMap((demand) => alternatives(demand.when))) {
    const wanted = Object.entries(when).filter(
      ([id, setting]) => setting === inputOf(system, id).settings[1],
    );
    const half = wanted.some(([id, setting]) => now[id] === setting);
    if (half && !holds(system, config.inputs, when)) {
      for (const [id, setting] of Object.entries(when)) if (now[id] !== setting) said.add(id);
    }
  }
  const words = system.inputs
    .filter(({ id }) => said.has(id))
    .map(({ id, label }) => `${label.toLowerCase()} ${now[id]}`);
  if (words.length > 0) return `With ${list(words)}`;
  return now[system.inputs[system.supply.input]?.id ?? ''] === 'off'
    ? 'With the supply off'
    : 'With nothing calling';
}

const inputOf = (system: System, id: string) => system.inputs.find((input) => input.id === id)!;

/** "hot water is called", "hot water and heating are called", or "nothing is called". */
export function sayCalled({ system, called }: StateView): string {
  const words = system.spec.demands.filter(called).map(({ says }) => says);
  return words.length > 0 ? `${list(words)} ${words.length > 1 ? 'are' : 'is'} called` : 'nothing is called';
}

const WORK = {
  fires: ['fires', 'does not fire'],
  pumps: ['runs', 'does not run'],
  heats: ['heats', 'does not heat'],
} as const;

/** What a part does or fails to do: "the boiler does not fire". */
export function sayWork({ parts }: System, part: number, works: boolean): string {
  const { name, kind } = parts[part]!;
  return `the ${name.toLowerCase()} ${WORK[kind.work?.does ?? 'fires'][works ? 0 : 1]}`;
}

/** That nothing is called, or that what is called does not need the part. */
export const sayNotCalled = (state: StateView, part: number): string =>
  state.system.spec.demands.some(state.called)
    ? `${sayCalled(state)}, which does not need the ${state.system.parts[part]!.name.toLowerCase()},`
    : 'no heat is called';

/** "is" or "are", for what a name says there is: "the radiators are". */
export const isAre = (name: string): string => (/[^s]s$/.test(name) ? 'are' : 'is');
