import { type Live, partWorks } from '../../engine/circuit/plain.ts';
import type { Break } from '../../engine/circuit/trace.ts';
import { type Config, partOf, type System } from '../../engine/model/system.ts';
import { capital, sayPosition, sayStanding, sayWork } from '../../engine/rules/words.ts';
import { coreAt } from '../wiring/cores.ts';
import { markOf } from '../wiring/names.ts';
import { inSentence, sayTerminal } from './say.ts';

/** The sentences of a walk along the live: each made from what the kind of part says of itself and how it stands. */

const possessive = (name: string): string => `${inSentence(name)}${name.endsWith('s') ? '’' : '’s'}`;

/** A closed contact: why it is closed, and what it makes live; a volt-free pair only goes on. */
export function sayContact(
  system: System,
  config: Config,
  contact: number,
  to: number,
  voltFree: boolean,
): string {
  const { part, spec } = system.contacts[contact]!;
  const { name, kind, slots, mover } = system.parts[part]!;
  const own = name.toLowerCase().includes(spec.id.toLowerCase()) || spec.id === 'contact';
  const what = /switch|pole|contact|output/.test(spec.id) ? spec.id : `${spec.id} contact`;
  const which =
    own && kind.contacts?.length === 1 ? `the ${inSentence(name)}` : `the ${possessive(name)} ${what}`;
  const stands = mover >= 0 || Object.keys(slots).length > 0;
  const why = stands ? `${capital(sayStanding(system, part, config))}. So ${which}` : capital(which);
  const mark = markOf(system.nodes[to]!);
  const inner = to >= system.terminals;
  const goesOn = voltFree ? (inner ? 'the pair goes on inside' : `the pair goes on to ${mark}`) : '';
  return `${why} is closed, and ${goesOn || (inner ? 'the live goes on inside' : `${mark} is live`)}.`;
}

/** A wire: the core it goes in, and what the terminal that it comes to is for. */
export function sayWire(system: System, from: number, to: number): string {
  const core = coreAt(system, system.nodes[from]!) ?? coreAt(system, system.nodes[to]!);
  const lead = core ? `${/^[aeiou]/.test(core) ? 'an' : 'a'} ${core.replace('-', '/')} core` : 'a link';
  const { kind, id } = partOf(system, to);
  const spec = kind.terminals.find((terminal) => system.nodes[to] === `${id}/${terminal.id}`);
  const does = spec && spec.duty !== 'joint' ? ` ${spec.does}` : '';
  return `From ${sayTerminal(system, from)} ${lead} takes it to ${sayTerminal(system, to)}.${does}`;
}

/** The start of a volt-free pair: the part feeds it itself. */
export function sayPair(system: System, load: number): string {
  const { a, b, part } = system.loads[load]!;
  const [one, other] = [sayTerminal(system, a), sayTerminal(system, b)];
  return `The ${inSentence(system.parts[part]!.name)} has a pair of its own, with no mains in it. It waits for ${one} and ${other} to be joined.`;
}

/** The end of a route: what the load does, and what comes of it. */
export function sayArrival(system: System, live: Live, config: Config, load: number): string {
  const { part, spec } = system.loads[load]!;
  const { name, id, kind, mover } = system.parts[part]!;
  const how = spec.ownLoop ? 'The pair is joined' : 'Line comes in here and neutral takes it home';
  if (mover >= 0 && system.movers[mover]!.drives.includes(load))
    return `${how}. That moves the ${inSentence(name)}: now ${sayPosition(system, id, config)}.`;
  return kind.work ? `${how}: ${sayWork(system, part, partWorks(system, live, part))}.` : `${how}.`;
}

/** A route that does not get there: where it stops, and at what. */
export function sayStop(system: System, config: Config, stop: Break, target: number): string {
  const goal =
    target < system.terminals
      ? sayTerminal(system, target)
      : `the ${inSentence(partOf(system, target).name)}`;
  const at = stop.route[0]!;
  const where =
    at < system.terminals ? sayTerminal(system, at) : `the ${inSentence(partOf(system, at).name)}`;
  const why =
    stop.contact === undefined
      ? 'No wire takes it on'
      : capital(sayStanding(system, system.contacts[stop.contact]!.part, config));
  return `The live does not get to ${goal}. It stops at ${where}. ${why}.`;
}
