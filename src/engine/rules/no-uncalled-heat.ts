import { anyOf } from '../circuit/sets.ts';
import { type Demand, partNamed } from '../model/system.ts';
import { explainLive, givingLoad } from './explain.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { capital, list, sayPosition, saySettings } from './words.ts';

/** Whether it is heated though no demand for the same radiators or coil asks. */
const isWarmedUnasked = ({ system, wanted, heated }: StateView, demand: Demand): boolean =>
  demand.coldWhenNotCalled === true &&
  heated(demand) &&
  !system.spec.demands.some((other) => other.heats === demand.heats && wanted(other));

export const noUncalledHeat: StateRule = {
  id: 'no-uncalled-heat',
  title: 'Nothing is heated that is not called',
  fails: 'Something is heated uncalled',
  severity: 'fault',
  source: 'common practice',
  function: 'A valve leaves the way open to something that nobody asked to warm.',
  compare:
    'Compare where the valve stands with where it should stand for this call. Which of its lives put it there?',
  scope: 'rest',
  broken: (state) => state.system.spec.demands.some((demand) => isWarmedUnasked(state, demand)),
  where: ({ sets, demands }) => {
    const cold = demands.flatMap(({ demand }, d) => {
      if (!demand.coldWhenNotCalled) return [];
      const same = demands.filter((other) => other.demand.heats === demand.heats);
      // A call that has to wait for another is the business of the rule about priority.
      const asked = anyOf(
        sets,
        same.map(({ wanted }) => wanted),
      );
      return [{ d, asked }];
    });
    return ({ heated }) =>
      anyOf(
        sets,
        cold.map(({ d, asked }) => sets.minus(heated[d]!, asked)),
      );
  },
  explain(state) {
    const { system, config } = state;
    const demand = system.spec.demands.find((one) => isWarmedUnasked(state, one))!;
    const load = givingLoad(state, demand);
    const source = load ? system.parts[load.part]!.name.toLowerCase() : 'heat source';
    const { says, terminals } = load
      ? explainLive(state, load)
      : { says: 'It is always hot.', terminals: [] };
    const valves = system.movers.map(({ part }) => sayPosition(system, system.parts[part]!.id, config));
    return {
      says: `${saySettings(state)}, ${demand.says} is not called but the ${source} heats the ${partNamed(system, demand.heats).name.toLowerCase()}. ${capital(list(valves))}. The ${source} fires: ${says.charAt(0).toLowerCase()}${says.slice(1)}`,
      terminals,
    };
  },
};
