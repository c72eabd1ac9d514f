import { drivesOf, type PartKind, type PartOptions } from './part.ts';
import type { Contact, Input, Load, Mover, Part, Supply, System, SystemPart, SystemSpec } from './system.ts';

/** Finds the kind of a part by its name; a kind may depend on options such as a number of ways. */
export type FindKind = (kind: string, options: PartOptions) => PartKind | undefined;

/** At most this many inputs: settings are kept as bits of one number. */
const MOST_INPUTS = 20;

/**
 * Numbers everything in a system. Throws an Error that names the culprit when the data does not fit together:
 * an unknown kind, an input no part uses, a missing supply.
 */
export function buildSystem(spec: SystemSpec, findKind: FindKind): System {
  const entries = Object.entries(spec.parts).map(([id, given]) => {
    const usual = findKind(given.kind, given.options ?? {});
    if (!usual) throw new Error(`part "${id}": unknown kind "${given.kind}"`);
    return { id, given, kind: withCores(usual, given) };
  });

  const inputs: Input[] = Object.entries(spec.inputs).map(([id, { label }]) => {
    const users = entries.flatMap(({ given, kind }) =>
      (kind.inputs ?? []).filter((slot) => (given.inputs?.[slot.slot] ?? slot.slot) === id),
    );
    if (users.length === 0) throw new Error(`input "${id}": no part uses it`);
    return { id, label, settings: users[0]!.settings };
  });
  if (inputs.length > MOST_INPUTS) throw new Error(`at most ${MOST_INPUTS} inputs, found ${inputs.length}`);

  const nodes: string[] = [];
  const partOfNode: number[] = [];
  const add = (part: number, name: string) => {
    nodes.push(name);
    partOfNode.push(part);
  };
  entries.forEach(({ id, kind }, k) => {
    for (const terminal of kind.terminals) add(k, `${id}/${terminal.id}`);
  });
  const terminals = nodes.length;
  entries.forEach(({ id, kind }, k) => {
    for (const inner of kind.inner ?? []) add(k, `${id}/(${inner})`);
  });
  const nodeOf = new Map(nodes.map((name, k) => [name, k]));
  const node = (id: string, name: string): number => {
    const found = nodeOf.get(`${id}/${name}`) ?? nodeOf.get(`${id}/(${name})`);
    if (found === undefined) throw new Error(`part "${id}": no node "${name}"`);
    return found;
  };

  const contacts: Contact[] = [];
  const loads: Load[] = [];
  const movers: Mover[] = [];
  const parts: Part[] = [];
  let places = 1;
  entries.forEach(({ id, given, kind }, part) => {
    for (const spec of kind.contacts ?? []) {
      contacts.push({ part, spec, a: node(id, spec.between[0]), b: node(id, spec.between[1]) });
    }
    const firstLoad = loads.length;
    for (const spec of kind.loads ?? []) {
      const via = spec.via === undefined ? -1 : node(id, spec.via);
      loads.push({ part, spec, a: node(id, spec.between[0]), b: node(id, spec.between[1]), via });
    }
    const load = (name: string): number => {
      const found = (kind.loads ?? []).findIndex((l) => l.id === name);
      if (found < 0) throw new Error(`kind "${kind.kind}": no load "${name}"`);
      return firstLoad + found;
    };
    let mover = -1;
    if (kind.motion) {
      const { positions, hold } = kind.motion;
      mover = movers.length;
      const drives = drivesOf(kind.motion).map(load);
      movers.push({ part, positions, drives, hold: hold ? load(hold) : -1, stride: places });
      places *= positions.length;
    }
    const slots: Record<string, number> = {};
    for (const { slot } of kind.inputs ?? []) {
      const name = given.inputs?.[slot] ?? slot;
      const index = inputs.findIndex((input) => input.id === name);
      if (index < 0) throw new Error(`part "${id}": input "${name}" is not among the system's inputs`);
      slots[slot] = index;
    }
    parts.push({ id, name: given.name, short: given.short ?? given.name, kind, slots, mover });
  });

  const supplies = entries.flatMap(({ id, kind }, part): Supply[] => {
    const poles = kind.supply;
    if (!poles) return [];
    const [line, neutral, earth] = [node(id, poles.line), node(id, poles.neutral), node(id, poles.earth)];
    const out = {
      line: node(id, poles.out.line),
      neutral: node(id, poles.out.neutral),
      earth: node(id, poles.out.earth),
    };
    return [{ part, input: parts[part]!.slots.supply ?? -1, line, neutral, earth, out }];
  });
  const [supply] = supplies;
  if (!supply) throw new Error('no part supplies the system');
  return {
    spec,
    inputs,
    parts,
    nodes,
    terminals,
    nodeOf,
    partOfNode,
    contacts,
    loads,
    movers,
    places,
    supply,
    supplies,
  };
}

/** The kind with the cores that this job's flexes have. */
function withCores(kind: PartKind, { cores, sleeved }: SystemPart): PartKind {
  if (!cores && !sleeved) return kind;
  const terminals = kind.terminals.map((terminal) => ({
    ...terminal,
    core: cores?.[terminal.id] ?? terminal.core,
    ...(sleeved?.includes(terminal.id) ? { sleeve: 'brown' as const } : {}),
  }));
  return { ...kind, terminals };
}
