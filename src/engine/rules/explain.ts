import { joinedTo, jointsIn } from '../circuit/plain.ts';
import { type Break, routeBetween, terminalsOf, whereItStops } from '../circuit/trace.ts';
import { type Demand, type Load, partOf, type System } from '../model/system.ts';
import { openWays } from '../plant/paths.ts';
import type { Explanation } from './rule.ts';
import type { StateView } from './view.ts';
import { capital, list, sayNode, sayPosition, sayStanding } from './words.ts';

/** The end of a load that should be live, by its terminal's duty. */
function lineEnd(system: System, load: Load): number {
  const duty = (node: number) =>
    partOf(system, node).kind.terminals.find(({ id }) => system.nodes[node]!.endsWith(`/${id}`))?.duty;
  return duty(load.a) === 'neutral' ? load.b : load.a;
}
const otherEnd = (system: System, load: Load): number => (lineEnd(system, load) === load.a ? load.b : load.a);

/** Movers that are shut because their own demand is not called: an open contact of theirs explains nothing. */
function idleValves({ system, called }: StateView): Set<number> {
  const idle = system.spec.demands.filter((demand) => demand.valve && !called(demand));
  return new Set(idle.map(({ valve }) => system.parts.findIndex(({ id }) => id === valve)));
}

/** The route that makes a load live, in a sentence. */
export function explainLive(state: StateView, load: Load): Explanation {
  const { system, wires, config, live } = state;
  if (load.spec.ownLoop) {
    const loop = routeBetween(system, wires, config, load.a, load.b) ?? [load.a, load.b];
    return {
      says: `Its pair is joined ${sayWay(system, loop, load.part)}.`,
      terminals: terminalsOf(system, loop),
    };
  }
  const node = lineEnd(system, load);
  const end = live.line[node] ? node : otherEnd(system, load);
  const feed =
    system.supplies[
      Math.max(
        0,
        live.lines.findIndex((line) => line[end]),
      )
    ]!;
  const route = routeBetween(system, wires, config, feed.line, end) ?? [end];
  return { says: `It is live ${sayWay(system, route, load.part)}.`, terminals: terminalsOf(system, route) };
}

/** The parts between the supply and the load that the live goes through; its own part is said as such. */
function sayWay(system: System, route: readonly number[], own: number): string {
  const names: string[] = [];
  let before = system.supply.part;
  route.forEach((node, k) => {
    const part = system.partOfNode[node]!;
    // In by one terminal and out by another; a route that ends inside a part has not gone through it.
    const next = route[k + 1] ?? system.terminals;
    const inside = next < system.terminals && system.partOfNode[next] === part && part !== system.supply.part;
    if (part === before || system.parts[part]!.kind.kind === 'strip' || !inside) return;
    names.push(part === own ? 'its own end switch' : `the ${system.parts[part]!.name.toLowerCase()}`);
    before = part;
  });
  return names.length > 0 ? `by way of ${list(names)}` : 'at all times: wires alone join it to the supply';
}

/** Where the supply of a dead load stops, in a sentence. */
export function explainDead(state: StateView, load: Load): Explanation {
  const { system, wires, config, live } = state;
  if (load.spec.ownLoop) {
    const joined = joinedTo(jointsIn(system, wires, config), load.a);
    const stop = whereItStops(system, wires, config, load.b, joined, idleValves(state));
    return {
      says: `Its pair stays open. ${sayBreak(state, stop, load.b)}`,
      terminals: terminalsOf(system, stop.route),
    };
  }
  const target = lineEnd(system, load);
  const back = otherEnd(system, load);
  if (live.line[target] && !live.neutral[back]) {
    const stop = whereItStops(system, wires, config, back, live.neutral);
    return {
      says: `Line reaches ${sayNode(system, target)}, but ${sayNode(system, back)} has no way back to neutral.`,
      terminals: terminalsOf(system, stop.route),
      compare:
        'Compare the blue cores with each other: which one does not reach the neutral of the supply, and from where on?',
    };
  }
  // A motor's own switches follow its movement: they are not what keeps it from moving.
  const idle = idleValves(state);
  const unlikely = new Set(idle);
  if (system.parts[load.part]!.mover >= 0) unlikely.add(load.part);
  const stop = whereItStops(system, wires, config, target, live.line, unlikely);
  const loose = idle.has(system.contacts[stop.contact ?? -1]?.part ?? -1) ? looseOutlet(state) : undefined;
  if (loose !== undefined) {
    return {
      says: `${capital(sayNode(system, loose))} is live, but no wire takes it on.`,
      terminals: [system.nodes[loose]!],
    };
  }
  return { says: sayBreak(state, stop, target), terminals: terminalsOf(system, stop.route) };
}

/** A live outlet of a valve's switch that no wire leaves. */
function looseOutlet({ system, wires, live }: StateView): number | undefined {
  const wired = new Set(wires.flat().map((end) => system.nodeOf.get(end)));
  return system.contacts.find(
    ({ part, b }) => system.parts[part]!.mover >= 0 && b < system.terminals && live.line[b] && !wired.has(b),
  )?.b;
}

function sayBreak({ system, config }: StateView, { route, contact }: Break, target: number): string {
  const first = route[0]!;
  if (contact === undefined || contact < 0) {
    return first === target || first >= system.terminals
      ? `Nothing that could be live is joined to ${sayNode(system, target)}.`
      : `Nothing is wired to ${sayNode(system, first)}, which should feed it.`;
  }
  const { part, a, b } = system.contacts[contact]!;
  const after = first === a ? b : a;
  const why = sayStanding(system, part, config);
  const gap = after < system.terminals ? ` and ${sayNode(system, after)} is dead` : '';
  return `The live stops at ${sayNode(system, first)}: ${why}${gap}.`;
}

/** A valve whose movement alone would open the demand's path, or the demand's own, or any on the way. */
export function blockingValve(state: StateView, demand: Demand, openAt: (place: number) => boolean) {
  const { system, config } = state;
  return (
    system.movers.find((mover) =>
      mover.positions.some((_, to) => {
        const at = Math.floor(config.place / mover.stride) % mover.positions.length;
        return openAt(config.place + (to - at) * mover.stride);
      }),
    ) ?? system.movers.find((mover) => system.parts[mover.part]!.id === demand.valve)
  );
}

/** Why a valve stands where it stands: its motor live and by what way, or dead and where the live stops. */
export function explainValve(state: StateView, part: number): Explanation {
  const { system, config, live } = state;
  const mover = system.movers.find((m) => m.part === part)!;
  const works = mover.drives.find((load) => live.works[load]);
  const drive = system.loads[works ?? mover.drives[0]!]!;
  const stands = capital(sayPosition(system, system.parts[part]!.id, config));
  const { says, ...rest } = works !== undefined ? explainLive(state, drive) : explainDead(state, drive);
  const motor = `Its ${drive.spec.id} is ${works !== undefined ? 'live' : 'dead'}.`;
  return { says: `${stands}. ${motor} ${says}`, ...rest };
}

/** The load that keeps a part from working, or the last of those that make it work. */
export function decisiveLoad({ system, live }: StateView, part: number, working: boolean): Load | undefined {
  const needs = system.parts[part]!.kind.work?.needs ?? [];
  const groups = needs.map((need) => {
    const names = typeof need === 'string' ? [need] : need;
    return system.loads.flatMap((load, l) =>
      load.part === part && names.includes(load.spec.id) ? [{ load, works: live.works[l]! }] : [],
    );
  });
  if (working) return groups.at(-1)?.find(({ works }) => works)?.load;
  return groups.find((group) => !group.some(({ works }) => works))?.[0]?.load;
}

/** The load that makes the heat source work whose heat gets to what the demand heats. */
export function givingLoad(state: StateView, { heats }: Demand): Load | undefined {
  const { system, config, working } = state;
  for (const [id, open] of openWays(system, config.place)) {
    const part = system.parts.findIndex((one) => one.id === id);
    if (open.has(heats) && working(part)) return decisiveLoad(state, part, true);
  }
  return undefined;
}
