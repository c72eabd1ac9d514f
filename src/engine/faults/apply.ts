import type { ContactSpec, FailureSpec, PartKind } from '../model/part.ts';
import type { Contact, Load, Mover, Part, Place, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import type { Failure } from './failure.ts';

/** A failure of a part, not of a wire. */
type PartFailure = Exclude<Failure, { readonly wire: unknown }>;

const stays = { closed: () => true, open: () => false } as const;

/** The kind a failed part now is: other ways through, other needs. Contacts and loads are failed by number, below. */
function failKind(kind: PartKind, failed: readonly PartFailure[]): PartKind {
  const leaks = failed.flatMap(({ spec }) => spec.leaks ?? []);
  const needs = failed.find(({ spec }) => spec.needs)?.spec.needs;
  return {
    ...kind,
    ...(leaks.length > 0
      ? { passes: (position: string) => [...(kind.passes?.(position) ?? []), ...leaks] }
      : {}),
    ...(needs && kind.work ? { work: { ...kind.work, needs } } : {}),
  };
}

/**
 * The system with these failures: contacts that stay as they are, loads that are dead, mechanisms that are stuck or
 * have no spring, ways that leak. Places and terminals keep their numbers; joints that only a failure makes come last.
 * A list in which nothing failed is the healthy system's own.
 */
export function failSystem(system: System, failures: readonly Failure[]): System {
  const failed = failures.filter((failure) => 'part' in failure);
  if (failed.length === 0) return system;
  const some = (concerns: (spec: FailureSpec) => unknown) => failed.some(({ spec }) => concerns(spec));
  return {
    ...system,
    contacts: some(({ contacts }) => contacts) ? failContacts(system, failed) : system.contacts,
    loads: some(({ dead }) => dead) ? failLoads(system, failed) : system.loads,
    movers: some(({ stuck, unsprung }) => stuck ?? unsprung) ? failMovers(system, failed) : system.movers,
    parts: some(({ leaks, needs }) => leaks ?? needs) ? failParts(system, failed) : system.parts,
  };
}

function failContacts(system: System, failed: readonly PartFailure[]): Contact[] {
  const contacts = [...system.contacts];
  for (const { part, spec } of failed) {
    const { id, kind } = system.parts[part]!;
    for (const [name, stay] of Object.entries(spec.contacts ?? {})) {
      const c = contacts.findIndex((contact) => contact.part === part && contact.spec.id === name);
      const fault = kind.faults?.find((joint) => joint.id === name);
      if (c >= 0) contacts[c] = { ...contacts[c]!, spec: { ...contacts[c]!.spec, closed: stays[stay] } };
      else if (fault) contacts.push(faultContact(system, part, id, fault));
      else throw new Error(`kind "${kind.kind}": no contact "${name}"`);
    }
  }
  return contacts;
}

const failLoads = ({ loads }: System, failed: readonly PartFailure[]): Load[] =>
  loads.map((load) =>
    failed.some(({ part, spec }) => part === load.part && spec.dead?.includes(load.spec.id))
      ? { ...load, dead: true }
      : load,
  );

const failMovers = ({ movers }: System, failed: readonly PartFailure[]): Mover[] =>
  movers.map((mover) => {
    const own = failed.filter(({ part }) => part === mover.part);
    return {
      ...mover,
      stuck: own.some(({ spec }) => spec.stuck !== undefined),
      unsprung: own.some(({ spec }) => spec.unsprung),
    };
  });

const failParts = ({ parts }: System, failed: readonly PartFailure[]): Part[] =>
  parts.map((one, p) => {
    const own = failed.filter(({ part, spec }) => part === p && (spec.leaks ?? spec.needs));
    return own.length > 0 ? { ...one, kind: failKind(one.kind, own) } : one;
  });

function faultContact(
  system: System,
  part: number,
  id: string,
  { id: name, between }: { id: string; between: readonly [string, string] },
): Contact {
  const node = (end: string) => system.nodeOf.get(`${id}/${end}`) ?? system.nodeOf.get(`${id}/(${end})`)!;
  const spec: ContactSpec = { id: name, between, closed: stays.closed };
  return { part, spec, a: node(between[0]), b: node(between[1]) };
}

/** The same two ends, whichever way round: `wireKey` without making a key. */
const sameWire = ([a, b]: Wire, [c, d]: Wire): boolean => (a === c && b === d) || (a === d && b === c);

/** The wires that are still whole. */
export function failWires(wires: readonly Wire[], failures: readonly Failure[]): readonly Wire[] {
  const broken = failures.filter((failure) => 'wire' in failure);
  return broken.length === 0
    ? wires
    : wires.filter((wire) => !broken.some((failure) => sameWire(failure.wire, wire)));
}

/** A place as the failures leave it: a stuck valve stands where it is stuck. */
export function failPlace(system: System, failures: readonly Failure[], place: Place): Place {
  let at = place;
  for (const failure of failures) {
    if ('wire' in failure || failure.spec.stuck === undefined) continue;
    const mover = system.movers[system.parts[failure.part]!.mover]!;
    const now = Math.floor(at / mover.stride) % mover.positions.length;
    at += (mover.positions.indexOf(failure.spec.stuck) - now) * mover.stride;
  }
  return at;
}
