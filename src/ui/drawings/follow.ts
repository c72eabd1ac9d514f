import {
  closedContacts,
  evaluate,
  type Live,
  nextPlaces,
  partWorks,
  wireJoints,
} from '../../engine/circuit/plain.ts';
import { routeBetween, whereItStops } from '../../engine/circuit/trace.ts';
import {
  alternatives,
  bitsOf,
  type Config,
  type Demand,
  partState,
  runsOf,
  type System,
  supplyOf,
} from '../../engine/model/system.ts';
import { canonicalWires, type Wire } from '../../engine/model/wiring.ts';
import { sayTerminal } from './say.ts';
import { sayArrival, sayContact, sayPair, sayStop, sayWire } from './step-words.ts';

/** One step of a walk along the live: where it has come to, and the contact or load it meets there. */
export interface Step {
  readonly says: string;
  readonly node: number;
  readonly contact?: number;
  readonly load?: number;
}

/** A call followed from the supply to what it makes work, in the state in which the valves have come to rest. */
export interface Journey {
  readonly config: Config;
  readonly steps: readonly Step[];
  /** Whether the live gets there and everything on the way works. */
  readonly arrives: boolean;
}

/** The state a call comes to rest in from cold; the last one looked at where it never rests. */
export function settleCall(system: System, wires: readonly Wire[], demand: Demand): Config {
  const supplied = system.supplies.flatMap(({ input }) => {
    const given = system.inputs[input];
    return given ? [[given.id, given.settings[1]]] : [];
  });
  const inputs = bitsOf(system, { ...Object.fromEntries(supplied), ...alternatives(demand.when)[0] });
  let config: Config = { inputs, place: 0 };
  for (let moves = 0; moves < 4 * (system.places + 1); moves++) {
    const next = nextPlaces(system, evaluate(system, wires, config), config.place)[0];
    if (next === undefined) break;
    config = { inputs, place: next };
  }
  return config;
}

/** The load that a call is for: what makes the boiler fire, or else whatever works for this call. */
export function goalOf(system: System, live: Live, demand: Demand): number {
  const must = runsOf(system, demand);
  const runs = must.length > 0 ? must : (demand.may ?? []);
  const rank = (part: number): number =>
    ['fires', 'heats', 'pumps'].indexOf(system.parts[part]!.kind.work?.does ?? '');
  const [part] = system.parts
    .flatMap(({ id, kind }, k) => (kind.work && runs.includes(id) ? [k] : []))
    .sort((p, q) => rank(p) - rank(q));
  if (part === undefined) return -1;
  const { kind } = system.parts[part]!;
  const loads = (kind.work?.needs ?? []).map((need) => {
    const names: readonly string[] = typeof need === 'string' ? [need] : need;
    const found = names.map((name) => system.loads.findIndex((l) => l.part === part && l.spec.id === name));
    return found.find((load) => live.works[load]) ?? found[0] ?? -1;
  });
  // What only keeps its electronics alive is not the call.
  const asks = loads.filter((load) => {
    const ends = system.loads[load]?.spec.between ?? [];
    return !ends.some((end) => kind.permanentLine?.includes(end));
  });
  return asks.at(-1) ?? loads.at(-1) ?? -1;
}

/**
 * Follows a call, with a sentence for each terminal and contact; what moves a valve or relay on the way comes first.
 * @param config the state it is followed in: as it comes to rest from cold unless told
 */
export function followLive(
  system: System,
  wiring: readonly Wire[],
  demand: Demand,
  config: Config = settleCall(system, wiring, demand),
): Journey {
  const wires = canonicalWires(wiring);
  const live = evaluate(system, wires, config);
  const closed = closedContacts(system, config);
  const wired = wireJoints(system, wires);
  const steps: Step[] = [];
  const been = new Set<number>();
  const moved = new Set<number>();
  let whole = true;

  /** The closed contact between two nodes of a route, or -1 where a wire joins them. */
  const crossed = (from: number, to: number): number =>
    wired[from]!.includes(to)
      ? -1
      : system.contacts.findIndex(
          ({ a, b }, k) => closed[k] && ((a === from && b === to) || (a === to && b === from)),
        );

  /** The mechanism that a contact is closed by, where it is closed only because that has left its rest; or -1. */
  const movedBy = (contact: number): number => {
    const { part, spec } = system.contacts[contact]!;
    const { mover } = system.parts[part]!;
    const rest = system.movers[mover]?.positions[0];
    const state = partState(system, system.parts[part]!, config);
    return rest !== undefined && !spec.closed({ ...state, position: rest }) ? mover : -1;
  };

  const reach = (load: number): void => {
    const { a, b, spec } = system.loads[load]!;
    const voltFree = spec.ownLoop === true;
    const target = voltFree || (live.neutral[a] && !live.neutral[b]) ? b : a;
    const fed = system.supplies.find((_, k) => live.lines[k]![target]) ?? supplyOf(system, demand);
    const route = routeBetween(system, wires, config, voltFree ? a : fed.line, target);
    if (!route) {
      whole = false;
      const stop = whereItStops(system, wires, config, target, live.line);
      const { contact } = stop;
      const says = sayStop(system, config, stop, target);
      steps.push({ says, node: stop.route[0]!, ...(contact !== undefined && { contact }) });
      return;
    }
    const hops = route.slice(1).map((to, k) => ({ from: route[k]!, to, contact: crossed(route[k]!, to) }));
    for (const { contact } of hops) {
      const mover = contact < 0 ? -1 : movedBy(contact);
      const drive = system.movers[mover]?.drives.find((other) => live.works[other]);
      if (drive === undefined || moved.has(mover)) continue;
      moved.add(mover);
      reach(drive);
    }
    const known = voltFree ? 0 : Math.max(0, ...route.map((node, k) => (been.has(node) ? k : 0)));
    const start = route[known]!;
    if (voltFree) steps.push({ node: a, says: sayPair(system, load) });
    else if (known > 0)
      steps.push({ node: start, says: `Back to ${sayTerminal(system, start)}, which is live already.` });
    for (const { from, to, contact } of hops.slice(known)) {
      if (contact < 0) steps.push({ node: to, says: sayWire(system, from, to) });
      else steps.push({ node: to, contact, says: sayContact(system, config, contact, to, voltFree) });
    }
    for (const node of route) been.add(node);
    steps.push({ node: target, load, says: sayArrival(system, live, config, load) });
  };

  const goal = goalOf(system, live, demand);
  if (goal >= 0) reach(goal);
  const { part } = system.loads[goal] ?? {};
  return { config, steps, arrives: whole && part !== undefined && partWorks(system, live, part) };
}
