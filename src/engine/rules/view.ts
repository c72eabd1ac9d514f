import { atWork, evaluate, type Live } from '../circuit/plain.ts';
import { type Config, type Demand, holds, partNamed, positionOf, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { openPaths } from '../plant/paths.ts';

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
  /** Called, and not excused by the demand's slack. */
  readonly mustMeet: (demand: Demand) => boolean;
  /** Whether an open path leads from a boiler through the demand's coil or radiators. */
  readonly open: (demand: Demand) => boolean;
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
  const open = openPaths(system, config.place);
  const { input } = system.supply;
  return {
    system,
    wires,
    config,
    live,
    powered: input < 0 || ((config.inputs >> input) & 1) === 1,
    fires: atWork(system, live, 'fires'),
    pumps: atWork(system, live, 'pumps'),
    called: ({ when }) => holds(system, config.inputs, when),
    mustMeet: ({ when, slack }) =>
      holds(system, config.inputs, when) && !(slack && holds(system, config.inputs, slack)),
    open: ({ heats }) => open.has(heats),
    shut: ({ valve }) => valve === undefined || atRest(system, valve, config.place),
  };
}
