import { atWork, directions, evaluate } from '../../circuit/plain.ts';
import type { InputBits, Place, System } from '../../model/system.ts';
import type { Wire } from '../../model/wiring.ts';
import { openPaths } from '../../plant/paths.ts';
import { failSystem, failWires } from '../apply.ts';
import type { Failure } from '../failure.ts';

/** Assumption: a valve that lets by passes a fifth of the heat that it passes when open. */
export const PASSING_SHARE = 0.2;

/** What the wiring does in one state, for as long as the state lasts. */
export interface Action {
  /** The boiler is asked to fire. */
  readonly fires: boolean;
  readonly pumps: boolean;
  /** Way of each valve: 1 driven on, 0 standing, -1 taken back by its spring. */
  readonly directions: readonly number[];
  /** Shares of full flow through coil and radiators, 0 to 1; nothing flows while no pump runs. */
  readonly coil: number;
  readonly radiators: number;
  /** Line meets neutral or earth: the fuse blows. */
  readonly short: boolean;
}

/** The part that stands for the store: what the demand heats that has an overheated state. */
const storeParts = (system: System): Set<string> =>
  new Set(system.spec.demands.flatMap(({ heats, overheated }) => (overheated ? [heats] : [])));

/**
 * What a wired system with these failures does in each state, worked out by the plain evaluator when first met and
 * kept: a day has thousands of steps and some dozens of states.
 */
export function makeElectrics(system: System, wires: readonly Wire[], failures: readonly Failure[]) {
  const failed = failSystem(system, failures);
  const whole = failWires(wires, failures);
  const stores = storeParts(system);
  const known = new Map<number, Action>();

  function workOut(inputs: InputBits, place: Place): Action {
    const live = evaluate(failed, whole, { inputs, place });
    const pumps = atWork(failed, live, 'pumps');
    const [open, leaking] = [openPaths(system, place), openPaths(failed, place)];
    const share = (wanted: (part: string) => boolean): number => {
      if (!pumps) return 0;
      if ([...open].some(wanted)) return 1;
      return [...leaking].some(wanted) ? PASSING_SHARE : 0;
    };
    return {
      fires: atWork(failed, live, 'fires'),
      pumps,
      directions: directions(failed, live, place),
      coil: share((part) => stores.has(part)),
      radiators: share((part) => !stores.has(part)),
      short: live.line[system.supply.neutral]! || live.line[system.supply.earth]!,
    };
  }

  return (inputs: InputBits, place: Place): Action => {
    const key = inputs * system.places + place;
    let action = known.get(key);
    if (!action) {
      action = workOut(inputs, place);
      known.set(key, action);
    }
    return action;
  };
}
