import type { ContactSpec, PartKind } from '../model/part.ts';
import type { Contact, Load, Mover, Part, Place, System } from '../model/system.ts';
import { type Wire, wireKey } from '../model/wiring.ts';
import type { Failure } from './failure.ts';

const stays = { closed: () => true, open: () => false } as const;

/** The kind a failed part now is: other ways through, other needs. Contacts and loads are failed by number, below. */
function failKind(
  kind: PartKind,
  specs: readonly { spec: NonNullable<PartKind['failures']>[number] }[],
): PartKind {
  const leaks = specs.flatMap(({ spec }) => spec.leaks ?? []);
  const needs = specs.find(({ spec }) => spec.needs)?.spec.needs;
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
 */
export function failSystem(system: System, failures: readonly Failure[]): System {
  const failed = failures.flatMap((failure) => ('wire' in failure ? [] : [failure]));
  if (failed.length === 0) return system;
  const contacts: Contact[] = [...system.contacts];
  const loads: Load[] = [...system.loads];
  const movers: Mover[] = [...system.movers];
  const parts: Part[] = [...system.parts];
  for (const { part, spec } of failed) {
    const { id, kind, mover } = system.parts[part]!;
    for (const [name, stay] of Object.entries(spec.contacts ?? {})) {
      const c = contacts.findIndex((contact) => contact.part === part && contact.spec.id === name);
      const fault = kind.faults?.find((joint) => joint.id === name);
      if (c >= 0) contacts[c] = { ...contacts[c]!, spec: { ...contacts[c]!.spec, closed: stays[stay] } };
      else if (fault) contacts.push(faultContact(system, part, id, fault));
      else throw new Error(`kind "${kind.kind}": no contact "${name}"`);
    }
    loads.forEach((load, l) => {
      if (load.part === part && spec.dead?.includes(load.spec.id)) loads[l] = { ...load, dead: true };
    });
    if (mover >= 0 && (spec.stuck !== undefined || spec.unsprung)) {
      movers[mover] = {
        ...movers[mover]!,
        ...(spec.stuck === undefined ? {} : { stuck: true }),
        ...(spec.unsprung ? { unsprung: true } : {}),
      };
    }
    if (spec.leaks || spec.needs) {
      parts[part] = {
        ...parts[part]!,
        kind: failKind(
          kind,
          failed.filter((other) => other.part === part),
        ),
      };
    }
  }
  return { ...system, contacts, loads, movers, parts };
}

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

/** The wires that are still whole. */
export function failWires(wires: readonly Wire[], failures: readonly Failure[]): readonly Wire[] {
  const broken = new Set(failures.flatMap((failure) => ('wire' in failure ? [wireKey(failure.wire)] : [])));
  return broken.size === 0 ? wires : wires.filter((wire) => !broken.has(wireKey(wire)));
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
