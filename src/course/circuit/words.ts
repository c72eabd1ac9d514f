import { closedContacts, directions, evaluate, wireJoints } from '../../engine/circuit/plain.ts';
import { routeBetween, whereItStops } from '../../engine/circuit/trace.ts';
import { partOf, positionIndex, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list, sayNode, sayPosition } from '../../engine/rules/words.ts';
import { see, unlike } from '../items/sight.ts';
import { sayCause, sayThrough } from './cause.ts';
import type { Standing } from './standing.ts';

/** What there is to say, one after the other; what is empty is left out. */
export const say = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(' ');

/** Numbers of the contacts that a route crosses, in order. */
export function contactsOn({ system, wires, config }: Standing, route: readonly number[]): number[] {
  const closed = closedContacts(system, config);
  const wired = wireJoints(system, wires);
  return route.slice(1).flatMap((to, k) => {
    const from = route[k] ?? to;
    if (wired[from]?.includes(to)) return [];
    const contact = system.contacts.findIndex(
      ({ a, b }, c) => closed[c] && ((a === from && b === to) || (a === to && b === from)),
    );
    return contact < 0 ? [] : [contact];
  });
}

/** The parts that a route goes through, and why their contacts are made: “through the programmer (hot water is on)”. */
export function sayWay(standing: Standing, route: readonly number[]): string {
  const { system, config } = standing;
  const crossed = new Map<number, number[]>();
  for (const contact of contactsOn(standing, route)) {
    const part = system.contacts[contact]?.part ?? -1;
    if (system.supplies.some((supply) => supply.part === part)) continue;
    crossed.set(part, [...(crossed.get(part) ?? []), contact]);
  }
  const through = [...crossed.values()].map((contacts) => sayThrough(system, contacts, config));
  return through.length > 0 ? `through ${list(through)}` : 'by wires alone';
}

const lineInto = ({ system, live }: Standing, node: number): number =>
  system.supplies.find((_, k) => live.lines[k]?.[node])?.line ?? system.supply.line;

/** The way that the live takes to a node, both ends included; the node alone when it is not live. */
export const wayTo = (standing: Standing, node: number): readonly number[] =>
  routeBetween(standing.system, standing.wires, standing.config, lineInto(standing, node), node) ?? [node];

/** Why a node is live: the way the live takes. */
export const sayWhyLive = (standing: Standing, node: number): string =>
  `${capital(sayNode(standing.system, node))} is live: the live gets there ${sayWay(standing, wayTo(standing, node))}.`;

/** Why the live does not get from one node of a way to the next: “because the room thermostat is satisfied”. */
export function sayHeldUp({ system, config }: Standing, here: number, next: number): string {
  const contact = system.contacts.findIndex(
    ({ a, b }) => (a === here && b === next) || (b === here && a === next),
  );
  return contact < 0 ? 'because no wire takes it on' : `because ${sayCause(system, contact, config)}`;
}

/** Where on a way the live stops in a state; empty when all of the way is live. */
export function sayStopsOn(standing: Standing, way: readonly number[]): string {
  const { system, live } = standing;
  const first = way.findIndex((node) => !live.line[node]);
  const [here, next] = [way[first - 1], way[first]];
  if (here === undefined || next === undefined) return '';
  const end = sayNode(system, way.at(-1) ?? next);
  return `On the way to ${end} the live stops at ${sayNode(system, here)}, ${sayHeldUp(standing, here, next)}.`;
}

/** Why a node is dead: where the live stops on its way there, or what the node belongs to instead. */
export function sayWhyDead(standing: Standing, node: number): string {
  const { system, wires, config, live } = standing;
  const name = capital(sayNode(system, node));
  if (live.neutral[node]) return `${name} is joined to neutral, so it is not live.`;
  if (live.earth[node]) return `${name} is joined to earth, so it is not live.`;
  const { route, contact } = whereItStops(system, wires, config, node, live.line);
  const at = route[0] ?? node;
  if (at === node && !live.line[node]) return `${name} is dead: no wire brings anything live to it.`;
  const why = contact === undefined ? 'no wire takes it on' : sayCause(system, contact, config);
  return `${name} is dead: on its way there the live stops at ${sayNode(system, at)}, because ${why}.`;
}

/** What moves because of a state, in words; boilers and pumps are left out, for they are seen to work. */
function moves({ system, config }: Standing, wires: readonly Wire[]): string[] {
  const live = evaluate(system, wires, config);
  return directions(system, live, config.place).flatMap((way, m) => {
    const mover = system.movers[m];
    const part = system.parts[mover?.part ?? -1];
    if (way === 0 || !mover || !part || part.kind.work) return [];
    const name = `the ${part.name.toLowerCase()}`;
    if (part.kind.passes) return [`${name} is ${way > 0 ? 'driven on' : 'taken back by its spring'}`];
    const at = positionIndex(mover, config.place);
    return [`${name} goes from ${mover.positions[at]} to ${mover.positions[at + way]}`];
  });
}

/** What would be otherwise with other wires in the same state; empty when nothing that can be seen. */
function otherwise(standing: Standing, wires: readonly Wire[]): string[] {
  const { system, config } = standing;
  const now = see(system, standing.wires, config);
  return [
    ...unlike(see(system, wires, config), now),
    ...moves(standing, wires).map((move) => `${capital(move)}.`),
  ];
}

/** What would be seen if a dead node were live. */
export function ifLive(standing: Standing, node: number): string {
  const { system, live } = standing;
  const name = sayNode(system, node);
  if (live.neutral[node] || live.earth[node])
    return `If ${name} were live, it would be a short: the fuse would blow.`;
  const feed = system.nodes[system.supply.out.line] ?? '';
  const seen = otherwise(standing, [...standing.wires, [feed, system.nodes[node] ?? '']]);
  return seen.length > 0
    ? `If ${name} were live, you would see this: ${seen.join(' ')}`
    : `If you take ${name} for live, you look past it for a break that lies before it.`;
}

/** What would be seen if a live node were dead. */
export function ifDead(standing: Standing, node: number): string {
  const { system } = standing;
  const terminal = system.nodes[node] ?? '';
  const without = standing.wires.filter(([a, b]) => a !== terminal && b !== terminal);
  const seen = otherwise(standing, without);
  const touch = `Take ${sayNode(system, node)} for dead and touch it, and you touch the mains.`;
  return seen.length > 0
    ? `If ${sayNode(system, node)} were dead, you would see this: ${seen.join(' ')} ${touch}`
    : touch;
}

/** How every valve stands, in a sentence; empty where there is none. */
export function sayValves({ system, config }: Pick<Standing, 'system' | 'config'>): string {
  const stands = system.movers.flatMap(({ part }) => {
    const { id, kind } = system.parts[part] ?? {};
    return id !== undefined && kind?.passes ? [sayPosition(system, id, config)] : [];
  });
  return stands.length > 0 ? `${capital(list(stands))}.` : '';
}

/** Whether a node is one a finger can find and worth asking about: a terminal with a wire, not on the spur or an earth. */
export const worthAsking = (system: System, wires: readonly Wire[], node: number): boolean => {
  const name = system.nodes[node] ?? '';
  const { kind, id } = partOf(system, node);
  const duty = kind.terminals.find((terminal) => name === `${id}/${terminal.id}`)?.duty;
  return (
    node < system.terminals &&
    !kind.supply &&
    duty !== 'earth' &&
    duty !== 'neutral' &&
    duty !== 'extra-low' &&
    wires.some((wire) => wire.includes(name))
  );
};
