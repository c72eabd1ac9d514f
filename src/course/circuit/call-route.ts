import { evaluate, type Live } from '../../engine/circuit/plain.ts';
import { routeBetween } from '../../engine/circuit/trace.ts';
import { type Demand, runsOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import type { Layout } from '../layout.ts';
import { callOf, type Standing, settled, stand } from './standing.ts';

/** The way of a call: the state it comes to rest in, and the nodes from the supply to what it makes work. */
export interface CallRoute {
  readonly demand: Demand;
  readonly standing: Standing;
  readonly route: readonly number[];
  /** Number of the part that it makes work. */
  readonly part: number;
}

/** The end of a load that line comes in at. */
export const lineEnd = (live: Live, a: number, b: number): number =>
  live.neutral[a] && !live.neutral[b] ? b : a;

/** Numbers of the loads that ask a part to work: not those that only keep its electronics alive. */
export function asksOf(system: System, part: number): number[] {
  const kind = system.parts[part]?.kind;
  const needs = (kind?.work?.needs ?? []).flat();
  return system.loads.flatMap((load, l) => {
    if (load.part !== part || !needs.includes(load.spec.id) || load.spec.ownLoop) return [];
    return load.spec.between.some((end) => kind?.permanentLine?.includes(end)) ? [] : [l];
  });
}

/**
 * The way of one call from the supply, from cold, in a right wiring; undefined where the valves race or no mains way leads to a
 * load that asks (a volt-free pair).
 */
export function callRoute(layout: Layout, wires: readonly Wire[], demand: Demand): CallRoute | undefined {
  const { system } = layout;
  const inputs = callOf(system, demand);
  const place = settled(system, wires, inputs, 0);
  if (place === undefined) return undefined;
  const standing = stand(layout, wires, { inputs, place });
  const { live, config } = standing;
  const runs = runsOf(system, demand);
  const rank = (part: number) =>
    ['fires', 'heats', 'pumps'].indexOf(system.parts[part]?.kind.work?.does ?? '');
  const parts = system.parts
    .flatMap(({ id, kind }, part) => (kind.work && runs.includes(id) ? [part] : []))
    .sort((a, b) => rank(a) - rank(b));
  for (const part of parts)
    for (const l of asksOf(system, part)) {
      const load = system.loads[l];
      if (!load || !live.works[l]) continue;
      const end = lineEnd(live, load.a, load.b);
      const supply = system.supplies.find((_, k) => live.lines[k]?.[end]);
      const route = supply && routeBetween(system, wires, config, supply.line, end);
      if (route) return { demand, standing, route, part };
    }
  return undefined;
}

/** Whether a node is live in other circumstances. */
export const liveAt = (system: System, wires: readonly Wire[], inputs: number, place: number) =>
  evaluate(system, wires, { inputs, place }).line;
