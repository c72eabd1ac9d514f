import { evaluate, partsAtWork } from '../../engine/circuit/plain.ts';
import {
  alternatives,
  type Config,
  type Demand,
  partNamed,
  runsOf,
  type Settings,
  type System,
  supplyOf,
} from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { viewState } from '../../engine/rules/view.ts';

/** The demands whose coil or radiators get heat. */
export function heatedIn(system: System, wires: readonly Wire[], config: Config): readonly Demand[] {
  const { heated } = viewState(system, wires, config);
  return system.spec.demands.filter(heated);
}

/** Whether something gets heat while a pump that its call needs stands still: nobody would ask for that. */
export function isStray(system: System, wires: readonly Wire[], config: Config): boolean {
  const working = partsAtWork(system, evaluate(system, wires, config));
  const stands = (id: string) => partNamed(system, id).kind.work?.does === 'pumps' && !working.has(id);
  return heatedIn(system, wires, config).some((demand) => runsOf(system, demand).some(stands));
}

/** The controls that call a demand, as they are set now; its supply first where that is off. */
export function neededBy(system: System, demand: Demand, now: Settings): string[] {
  const supply = system.inputs[supplyOf(system, demand).input];
  const asked = new Set(alternatives(demand.when).flatMap((when) => Object.keys(when)));
  return system.inputs.flatMap(({ id, label, settings: [rest] }) =>
    asked.has(id) || (id === supply?.id && now[id] === rest) ? [`${label.toLowerCase()} ${now[id]}`] : [],
  );
}
