import { evaluate, nextPlaces } from '../../../src/engine/circuit/plain.ts';
import { explorePlain } from '../../../src/engine/explore/plain.ts';
import { failPlace, failSystem, failWires } from '../../../src/engine/faults/apply.ts';
import type { Failure } from '../../../src/engine/faults/failure.ts';
import type { Hazard } from '../../../src/engine/faults/hazard.ts';
import { holds, type InputBits, type Place, type System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { viewState } from '../../../src/engine/rules/view.ts';

/**
 * The same question as the test bed answers, one state and one move at a time: do these failures let the hazard
 * through? They strike wherever the healthy system rests; then switches are thrown and valves move in any order.
 */
export function plainSearch(system: System, wires: readonly Wire[], hazard: Hazard) {
  const starts = new Set([...explorePlain(system, wires).judged].map((key) => key % system.places));
  const all = Array.from({ length: 1 << system.inputs.length }, (_, inputs) => inputs);

  return function strikes(failures: readonly Failure[]): boolean {
    const failed = failSystem(system, failures);
    const whole = failWires(wires, failures);
    const following = new Map<string, readonly Place[]>();
    const after = (inputs: InputBits, place: Place): readonly Place[] => {
      const key = `${inputs} ${place}`;
      const known =
        following.get(key) ?? nextPlaces(failed, evaluate(failed, whole, { inputs, place }), place);
      following.set(key, known);
      return known;
    };

    return hazard.watches(system).some((watch) => {
      const combinations = all.filter((inputs) => holds(system, inputs, watch.fixed));
      const rests = new Set([...starts].map((place) => failPlace(system, failures, place)));
      const counts = new Map<string, readonly [InputBits, Place]>();
      for (const from of rests) {
        for (const inputs of combinations) {
          const places = new Set([from]);
          for (const place of places) {
            const next = after(inputs, place);
            for (const to of next) places.add(to);
            if (next.length === 0) rests.add(place);
            if (next.length === 0 || hazard.scope === 'met')
              counts.set(`${inputs} ${place}`, [inputs, place]);
          }
        }
      }
      return [...counts.values()].some(([inputs, place]) => {
        const state = viewState(failed, whole, { inputs, place });
        // Line joined to neutral or earth: the fuse has blown.
        const { neutral, earth } = system.supply;
        const blown = state.live.line[neutral] || state.live.line[earth];
        return !blown && hazard.there(state, watch);
      });
    });
  };
}
