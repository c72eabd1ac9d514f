import { atWork, evaluate, type Live, partWorks } from '../circuit/plain.ts';
import {
  alternatives,
  type Config,
  type Demand,
  holds,
  isCalled,
  isOn,
  partNamed,
  positionOf,
  type System,
  wants,
} from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { openWays } from '../plant/paths.ts';

/** One state of a wired system, with everything a rule may ask of it. */
export interface StateView {
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly config: Config;
  readonly live: Live;
  readonly powered: boolean;
  readonly fires: boolean;
  readonly pumps: boolean;
  readonly called: (demand: Demand) => boolean;
  /** Its settings hold, whether or not it has to wait for another demand. */
  readonly wanted: (demand: Demand) => boolean;
  /** Called, and not excused by the demand's slack. */
  readonly mustMeet: (demand: Demand) => boolean;
  /** Whether an open path leads from a heat source through the demand's coil or radiators. */
  readonly open: (demand: Demand) => boolean;
  /** Whether one that works has such an open path. */
  readonly heated: (demand: Demand) => boolean;
  /** Whether the part, by number, does its work. */
  readonly working: (part: number) => boolean;
  /** Whether the demand's own valve is shut; true for a demand without one. */
  readonly shut: (demand: Demand) => boolean;
}

/** Whether a valve stands in its first position: shut, or at rest. */
export function atRest(system: System, part: string, place: number): boolean {
  const found = partNamed(system, part);
  return positionOf(system, found, place) === (found.kind.motion?.positions[0] ?? '');
}

export function viewState(system: System, wires: readonly Wire[], config: Config): StateView {
  const live = evaluate(system, wires, config);
  const ways = [...openWays(system, config.place)];
  const working = (part: number) =>
    system.parts[part]!.kind.work !== undefined && partWorks(system, live, part);
  const gives = (id: string) =>
    partWorks(
      system,
      live,
      system.parts.findIndex((part) => part.id === id),
    );
  const called = (demand: Demand) => isCalled(system, config.inputs, demand);
  return {
    system,
    wires,
    config,
    live,
    powered: isOn(system.supply, config.inputs),
    fires: atWork(system, live, 'fires'),
    pumps: atWork(system, live, 'pumps'),
    called,
    wanted: (demand) => wants(system, config.inputs, demand),
    mustMeet: (demand) =>
      called(demand) &&
      !(demand.slack && alternatives(demand.slack).some((s) => holds(system, config.inputs, s))),
    open: ({ heats }) => ways.some(([, open]) => open.has(heats)),
    heated: ({ heats }) => ways.some(([id, open]) => open.has(heats) && gives(id)),
    working,
    shut: ({ valve }) => valve === undefined || atRest(system, valve, config.place),
  };
}
