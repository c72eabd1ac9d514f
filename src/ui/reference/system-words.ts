import type { PartKind } from '../../engine/model/part.ts';
import { alternatives, type Demand, type Settings, type System } from '../../engine/model/system.ts';
import { capital, list } from '../../engine/rules/words.ts';

/** A part's name inside a sentence: "the cylinder coil". */
function sayPart({ spec }: System, id: string): string {
  return `the ${spec.parts[id]?.name.toLowerCase() ?? id}`;
}

/** Settings in words: "hot water on, cylinder calling and cut-out healthy". */
const saySettings = ({ spec }: System, settings: Settings): string =>
  list(Object.entries(settings).map(([id, setting]) => `${spec.inputs[id]?.label.toLowerCase()} ${setting}`));

/** When a demand is called: every set of settings of which one is enough, in words. */
export const sayWhen = (system: System, { when }: Demand): string[] =>
  alternatives(when).map((settings) => capital(saySettings(system, settings)));

/** What follows from a demand, each in one sentence: where the heat goes, what must run, what must be shut. */
export function sayDemand(system: System, demand: Demand): string[] {
  const { heats, valve, coldWhenNotCalled, slack, yields, runs, may, supply } = demand;
  const taker = sayPart(system, heats);
  const firsts = system.spec.demands.find(({ id }) => id === yields);
  const sentences = [`While it is called, heat must reach ${taker}.`];
  if (runs && runs.length > 0)
    sentences.push(`It needs ${list(runs.map((id) => sayPart(system, id)))} to work.`);
  if (may && may.length > 0)
    sentences.push(`${capital(list(may.map((id) => sayPart(system, id))))} may work too.`);
  if (valve) sentences.push(`Whenever it is not called, ${sayPart(system, valve)} must be shut.`);
  if (coldWhenNotCalled) sentences.push(`Whenever it is not called, no heat may go to ${taker}.`);
  if (firsts) sentences.push(`It waits while ${firsts.says} is called.`);
  if (supply) sentences.push(`It has a supply of its own: ${sayPart(system, supply)}.`);
  for (const settings of slack ? alternatives(slack) : [])
    sentences.push(`With ${saySettings(system, settings)} it may be met but need not be.`);
  return sentences;
}

/** A valve moves, and where it stands decides which ways are open. A boiler's overrun timer moves as well. */
export const isValve = ({ motion, passes, heat, work }: PartKind): boolean =>
  motion !== undefined && passes !== undefined && heat === undefined && work === undefined;

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** The valves in words, from the parts: "One three-port valve and two two-port valves", or "None". */
export function sayValves({ parts }: System): string {
  const counts = new Map<string, number>();
  for (const { kind } of parts) {
    if (isValve(kind)) counts.set(kind.title, (counts.get(kind.title) ?? 0) + 1);
  }
  const words = [...counts].map(
    ([title, count]) => `${numbers[count] ?? count} ${title.toLowerCase()}${count > 1 ? 's' : ''}`,
  );
  return words.length > 0 ? capital(list(words)) : 'None';
}

/** How many motorised valves stand in the pipes. */
export const valveCount = ({ parts }: System): number => parts.filter(({ kind }) => isValve(kind)).length;

/** What a person or a clock sets, and what only stops heat: neither feels whether heat is wanted. */
const feelNothing = ['on', 'tripped'];

/**
 * Calls that no thermostat has a say in, by what is called: with one of these the boiler can run though everything is
 * warm, so there is no boiler interlock (Approved Document L, Volume 1, 2021 edition, 5.15).
 */
export function callsWithoutThermostat({ inputs, spec }: System): string[] {
  const feeling = new Set(
    inputs.filter(({ settings }) => !feelNothing.includes(settings[1])).map(({ id }) => id),
  );
  return spec.demands
    .filter(({ when }) =>
      alternatives(when).some((settings) => !Object.keys(settings).some((id) => feeling.has(id))),
    )
    .map(({ says }) => says);
}

/** The boiler interlock: whether there is one, and in words. `none`: there is no boiler. */
export interface Interlock {
  readonly has: 'yes' | 'no' | 'none';
  readonly says: string;
}

/** Reads the interlock off the calls. That the boiler is off when nothing calls is judged for every right wiring. */
export function interlockOf(system: System): Interlock {
  if (!system.parts.some(({ kind }) => kind.work?.does === 'fires'))
    return { has: 'none', says: 'There is no boiler.' };
  const open = callsWithoutThermostat(system);
  return open.length === 0
    ? { has: 'yes', says: 'Yes: every call goes through a thermostat.' }
    : { has: 'no', says: `No: ${list(open)} ${open.length > 1 ? 'are' : 'is'} called without a thermostat.` };
}
