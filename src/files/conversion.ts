import { partOf, type System } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';
import { checkWires } from './attempt.ts';
import { FileError, show } from './error.ts';
import type { Before } from './job.ts';
import type { Reference } from './mistake.ts';
import { placeAt } from './place.ts';
import { oneOf } from './suggest.ts';

/** The system that a conversion starts from, and its right wirings. */
export interface OldSystem {
  readonly system: System;
  readonly references: readonly Pick<Reference, 'id' | 'wires'>[];
}

/** What a conversion starts with. */
export interface Start {
  /** The old wires that still have both ends, by the names of the new system. */
  readonly wires: readonly Wire[];
  /** Leads of the old system that were wired and are no longer there, in its order: they left with their parts. */
  readonly gone: readonly string[];
}

/**
 * The old wiring on the new set of parts. A part is the same one when it has the same id, or the one that `renames`
 * gives; a terminal when it has the same marking.
 * @throws FileError with the first name that one of the systems does not know
 */
export function startWiring(from: Before, old: OldSystem, now: System, file: string): Start {
  const fail = (path: readonly PropertyKey[], name: string, known: Iterable<string>) => {
    throw new FileError({
      file,
      place: placeAt(['from', ...path]),
      expected: oneOf(name, known),
      found: show(name),
    });
  };
  const partIds = (system: System) => system.parts.map(({ id }) => id);
  for (const [was, is] of Object.entries(from.renames)) {
    if (!partIds(old.system).includes(was)) fail(['renames', was], was, partIds(old.system));
    if (!partIds(now).includes(is)) fail(['renames', was], is, partIds(now));
  }
  const translate = (terminal: string): string | undefined => {
    const slash = terminal.indexOf('/');
    const part = terminal.slice(0, slash);
    const name = `${from.renames[part] ?? part}${terminal.slice(slash)}`;
    const node = now.nodeOf.get(name);
    return node === undefined || node >= now.terminals ? undefined : name;
  };

  const wires = oldWires(from, old, file, fail);
  const gone = new Set(wires.flat().filter((terminal) => translate(terminal) === undefined));
  return {
    wires: wires.flatMap(([a, b]): Wire[] => {
      const [x, y] = [translate(a), translate(b)];
      return x !== undefined && y !== undefined && x !== y ? [[x, y]] : [];
    }),
    gone: old.system.nodes.filter((terminal) => gone.has(terminal)),
  };
}

function oldWires(
  { reference, wires }: Before,
  { system, references }: OldSystem,
  file: string,
  fail: (path: readonly PropertyKey[], name: string, known: Iterable<string>) => void,
): readonly Wire[] {
  if (wires) {
    checkWires(system, wires, file, ['from', 'wires']);
    return wires;
  }
  const found = references.find(({ id }) => id === reference);
  if (!found)
    fail(
      ['reference'],
      reference ?? '',
      references.map(({ id }) => id),
    );
  return found?.wires ?? [];
}

/** What a learner is told of the layout that was there before. */
export interface WasHere {
  /** The title of the old layout. */
  readonly title: string;
  /** What was replaced. */
  readonly says: string;
  /** Leads that left with their parts, part by part: "three-port valve (white, grey)". */
  readonly gone: readonly string[];
}

/** The leads that left, part by part, in the words of `WasHere`. */
export function partsGone(old: System, gone: readonly string[]): string[] {
  const groups = new Map<string, string[]>();
  for (const terminal of gone) {
    const { name } = partOf(old, old.nodeOf.get(terminal) ?? 0);
    groups.set(name, [...(groups.get(name) ?? []), terminal.slice(terminal.indexOf('/') + 1)]);
  }
  return [...groups].map(([name, terminals]) => `${name.toLowerCase()} (${terminals.join(', ')})`);
}
