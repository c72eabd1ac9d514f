import { anyOf } from '../circuit/sets.ts';
import { type Demand, partNamed } from '../model/system.ts';
import { explainLive, givingLoad } from './explain.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { isAre, saySettings } from './words.ts';

/** The demand that goes before this one. */
const firstOf = ({ system }: StateView, { yields }: Demand) =>
  system.spec.demands.find(({ id }) => id === yields);

/** Whether it is heated while the demand that goes first is called. */
function jumpsQueue(state: StateView, demand: Demand): boolean {
  const first = firstOf(state, demand);
  return first !== undefined && state.called(first) && state.heated(demand);
}

export const hotWaterPriority: StateRule = {
  id: 'hot-water-priority',
  title: 'The call that goes first has all the heat',
  fails: 'Heat is shared with a call that should wait',
  severity: 'fault',
  source: 'common practice',
  function:
    'On a system with priority the second circuit waits until the first is satisfied. Here it does not.',
  compare: 'Compare where the valve stands with the call that goes first. What moves it back too early?',
  scope: 'rest',
  broken: (state) => state.system.spec.demands.some((demand) => jumpsQueue(state, demand)),
  where: ({ sets, demands }) => {
    const waiting = demands.flatMap(({ demand }, d) => {
      const first = demands.find((other) => other.demand.id === demand.yields);
      return first ? [{ d, called: first.called }] : [];
    });
    return ({ heated }) =>
      anyOf(
        sets,
        waiting.map(({ d, called }) => sets.and(called, heated[d]!)),
      );
  },
  explain(state) {
    const { system } = state;
    const demand = system.spec.demands.find((one) => jumpsQueue(state, one))!;
    const load = givingLoad(state, demand);
    const heated = partNamed(system, demand.heats).name.toLowerCase();
    const { says, terminals } = load ? explainLive(state, load) : { says: '', terminals: [] };
    return {
      says: `${saySettings(state)}, ${firstOf(state, demand)!.says} goes first, yet the ${heated} ${isAre(heated)} heated. ${says}`.trim(),
      terminals,
    };
  },
};
