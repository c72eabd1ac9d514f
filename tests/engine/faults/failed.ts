import { atWork, evaluate } from '../../../src/engine/circuit/plain.ts';
import { failPlace, failSystem, failWires } from '../../../src/engine/faults/apply.ts';
import { allFailures, type Failure, failureId } from '../../../src/engine/faults/failure.ts';
import { bitsOf, positionOf, type Settings, type System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { openPaths } from '../../../src/engine/plant/paths.ts';
import { must } from '../support/must.ts';
import { look, placeOf, restsAfter } from '../support/places.ts';

/** The failures of these names in a wired system. */
export function named(system: System, wires: readonly Wire[], ...ids: readonly string[]): Failure[] {
  const all = allFailures(system, wires);
  return ids.map((id) =>
    must(
      all.find((failure) => failureId(system, failure) === id),
      id,
    ),
  );
}

/** What a person sees of a wired system in one state, with these failures: told by the plain evaluator alone. */
export function observe(
  system: System,
  wires: readonly Wire[],
  failures: readonly Failure[],
  settings: Settings,
  positions: Readonly<Record<string, string>>,
) {
  const failed = failSystem(system, failures);
  const whole = failWires(wires, failures);
  const place = failPlace(system, failures, placeOf(system, positions));
  const { isLive, works } = look(failed, whole, settings, place);
  const live = evaluate(failed, whole, { inputs: bitsOf(system, settings), place });
  return {
    live: isLive,
    works,
    fires: () => atWork(failed, live, 'fires'),
    heats: (part: string) => openPaths(failed, place).has(part),
    /** Where a valve comes to rest from here; empty when it never does. */
    rests: (valve: string) =>
      restsAfter(failed, whole, settings, place)
        .map((at) => positionOf(failed, must(failed.parts.find(({ id }) => id === valve)), at))
        .sort()
        .join(' or '),
  };
}

export type Observed = ReturnType<typeof observe>;
