import type { PartKind } from '../../engine/model/part.ts';
import { type Part, positionOf, type System } from '../../engine/model/system.ts';
import { wireKey } from '../../engine/model/wiring.ts';
import { list } from '../../engine/rules/words.ts';
import { coreAt, coreCode } from './cores.ts';
import { nameOf, tagOf } from './names.ts';
import type { Session } from './session.svelte.ts';

export interface Condition {
  readonly kind: 'live' | 'neutral' | 'earth' | 'dead' | 'empty';
  readonly word: string;
}

/** What a terminal is at now, as a kind for the eye and a word for everybody. */
export function conditionOf(session: Session, terminal: string): Condition {
  const { system, live } = session;
  const node = system.nodeOf.get(terminal)!;
  if (live.line[node]) return { kind: 'live', word: 'live' };
  if (live.neutral[node]) return { kind: 'neutral', word: 'neutral' };
  if (live.earth[node]) return { kind: 'earth', word: 'earth' };
  return session.landed(terminal).length > 0
    ? { kind: 'dead', word: 'dead' }
    : { kind: 'empty', word: 'empty' };
}

/** A terminal in full, for a screen reader; it begins with the words that are written on it. */
export function sayTerminal(session: Session, terminal: string): string {
  const ends = session.landed(terminal).map((id) => nameOf(session.system, id));
  const lands = ends.length > 0 ? `joined to ${list(ends)}` : 'not joined';
  const { word } = conditionOf(session, terminal);
  return coreAt(session.system, terminal) === undefined
    ? `${nameOf(session.system, terminal)} ${word}, ${lands}`
    : `${nameOf(session.system, terminal)}, ${lands}, ${word}`;
}

/** What moves it on, and what takes it back: a valve's motor and spring, a relay's coil, a boiler's overrun timer. */
function sayMove({ kind }: Part, way: number): string {
  if (kind.work?.does === 'fires') return way > 0 ? 'starting…' : 'pump overrun…';
  if (kind.work?.does === 'pumps') return way > 0 ? 'starting…' : 'stopping…';
  if (!kind.ports) return way > 0 ? 'pulling in…' : 'dropping out…';
  return way > 0 ? 'motor driving…' : 'spring returning…';
}

/** The same for a sentence. */
function saysMoving({ ports, heat }: PartKind, way: number): string {
  if (heat === 'gives') return way > 0 ? 'starts' : 'runs its pump on';
  if (!ports) return way > 0 ? 'pulls in' : 'drops out';
  return `is ${way > 0 ? 'driven by its motor' : 'taken back by its spring'}`;
}

/** How a part stands now, short enough for its box. */
export function stateOf(session: Session, part: Part): { says: string; active: boolean } {
  const { system, config, directions, settings } = session;
  const atWork = session.working.has(part.id);
  if (part.mover >= 0) {
    const way = directions[part.mover] ?? 0;
    const position = positionOf(system, part, config.place);
    const first = part.kind.motion?.positions[0];
    if (way !== 0) return { says: sayMove(part, way), active: true };
    if (part.kind.work?.does === 'fires' && atWork) return { says: 'firing', active: true };
    return {
      says: system.spec.parts[part.id]?.positions?.[position] ?? position,
      active: position !== first,
    };
  }
  if (part.kind.work?.does === 'heats') return { says: atWork ? 'heating' : 'off', active: atWork };
  if (part.kind.work?.does === 'fires') return { says: atWork ? 'firing' : 'off', active: atWork };
  if (part.kind.work?.does === 'pumps') return { says: atWork ? 'running' : 'off', active: atWork };
  const slots = Object.values(part.slots);
  const says = slots.map((slot) => {
    const { id, label } = system.inputs[slot]!;
    return slots.length > 1 ? `${label.toLowerCase()} ${settings[id]}` : settings[id]!;
  });
  const active = slots.some((slot) => ((config.inputs >> slot) & 1) === 1);
  return { says: says.join(' · '), active };
}

/** What is live on the strip and what moves, in one sentence. */
export function sayNow(session: Session): string {
  const { system, live, directions } = session;
  const ways = system.parts.find(({ kind }) => kind.kind === 'strip');
  const lit = (ways?.kind.terminals ?? []).filter(
    ({ id }) => live.line[system.nodeOf.get(`${ways!.id}/${id}`)!],
  );
  const strip =
    lit.length > 0 ? `Live on the strip: ${list(lit.map(({ id }) => id))}.` : 'Nothing on the strip is live.';
  return `${strip} ${sayMoving(system, directions)}`.trim();
}

/** What moves now, and what moves it; empty when nothing does. */
export function sayMoving(system: System, directions: readonly number[]): string {
  const moving = system.movers.flatMap(({ part }, m) => {
    const way = directions[m] ?? 0;
    const { name, kind } = system.parts[part]!;
    return way === 0 ? [] : [`the ${name.toLowerCase()} ${saysMoving(kind, way)}`];
  });
  return moving.length > 0 ? `Now ${list(moving)}.` : '';
}

/** Wires of a wiring as a list to read or print: from, to, and the letters of the core where it has one. */
export const sayWires = (session: Session): { key: string; from: string; to: string; core: string }[] =>
  session.wires.map((wire) => {
    const core = coreAt(session.system, wire[0]) ?? coreAt(session.system, wire[1]);
    return {
      key: wireKey(wire),
      from: tagOf(session.system, wire[0]),
      to: tagOf(session.system, wire[1]),
      core: core ? coreCode[core] : '',
    };
  });
