import type { Live } from '../../engine/circuit/plain.ts';
import { routeBetween } from '../../engine/circuit/trace.ts';
import { type Demand, runsOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { sayWork } from '../../engine/rules/words.ts';
import type { Layout } from '../layout.ts';
import { callOf, type Standing, settled, stand } from './standing.ts';

/** The way of a call: the state it comes to rest in, and the nodes from the supply to what it makes work. */
export interface CallRoute {
  readonly demand: Demand;
  readonly standing: Standing;
  readonly route: readonly number[];
  /** What it leads to: “the boiler”, “the motor of the heating valve”. */
  readonly to: string;
  /** What is seen when the live does not get there: “the boiler does not fire”. */
  readonly fails: string;
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

/** Loads that a call makes work: those that ask its boilers and pumps, the boiler first; or those that drive its valves. */
function targets(system: System, demand: Demand, valves: boolean): { part: number; load: number }[] {
  if (valves)
    return system.movers.flatMap(({ part, drives }) => {
      const { kind } = system.parts[part] ?? {};
      return kind?.passes && !kind.work ? drives.map((load) => ({ part, load })) : [];
    });
  const runs = runsOf(system, demand);
  const rank = (part: number) =>
    ['fires', 'heats', 'pumps'].indexOf(system.parts[part]?.kind.work?.does ?? '');
  return system.parts
    .flatMap(({ id, kind }, part) => (kind.work && runs.includes(id) ? [part] : []))
    .sort((a, b) => rank(a) - rank(b))
    .flatMap((part) => asksOf(system, part).map((load) => ({ part, load })));
}

/**
 * The way of one call from the supply, from cold, in a right wiring: to the boiler or pump that it calls, or to the
 * motor of the valve that it drives. Undefined where the valves race, where no mains way leads to a load that asks (a
 * volt-free pair), and where the call drives no valve.
 */
export function callRoute(
  layout: Layout,
  wires: readonly Wire[],
  demand: Demand,
  valves = false,
): CallRoute | undefined {
  const { system } = layout;
  const inputs = callOf(system, demand);
  const place = settled(system, wires, inputs, 0);
  if (place === undefined) return undefined;
  const standing = stand(layout, wires, { inputs, place });
  const { live, config } = standing;
  for (const { part, load: l } of targets(system, demand, valves)) {
    const load = system.loads[l];
    if (!load || !live.works[l]) continue;
    const end = lineEnd(live, load.a, load.b);
    const supply = system.supplies.find((_, k) => live.lines[k]?.[end]);
    const route = supply && routeBetween(system, wires, config, supply.line, end);
    const name = `the ${system.parts[part]?.name.toLowerCase()}`;
    if (route)
      return valves
        ? {
            demand,
            standing,
            route,
            to: `the ${load.spec.id} of ${name}`,
            fails: `the ${load.spec.id} of ${name} gets no mains`,
          }
        : { demand, standing, route, to: name, fails: sayWork(system, part, false) };
  }
  return undefined;
}
