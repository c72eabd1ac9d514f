import { anyOf } from '../circuit/sets.ts';
import { type Demand, partNamed } from '../model/system.ts';
import { explainValve } from './explain.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { saySettings } from './words.ts';

/** Whether the demand's valve is open though nothing that it serves is called. */
const openUncalled = ({ system, called, shut }: StateView, demand: Demand): boolean =>
  !shut(demand) && !system.spec.demands.some((other) => other.valve === demand.valve && called(other));

export const valveShut: StateRule = {
  id: 'valve-shut',
  title: 'The valve in the coil flow is shut whenever hot water is not called',
  fails: 'The valve in the coil flow can stay open uncalled',
  severity: 'danger',
  source: 'Approved Document G, 2015 edition with 2016 amendments, 3.28, 3.30 and 3.31',
  function: 'The valve that must shut off the cylinder is held open.',
  compare:
    'Compare what feeds the motor with the call: programmer, cylinder thermostat and cut-out must all lie in its way. Then look for a second way in, through an end switch or a back-feed.',
  scope: 'rest',
  broken: (state) => state.powered && state.system.spec.demands.some((demand) => openUncalled(state, demand)),
  where: ({ sets, powered, demands }) => {
    const open = demands.map(({ demand, shut }) => {
      const sharing = demands.filter((other) => other.demand.valve === demand.valve);
      const asked = anyOf(
        sets,
        sharing.map(({ called }) => called),
      );
      return sets.not(sets.or(shut, asked));
    });
    const broken = sets.and(powered, anyOf(sets, open));
    return () => broken;
  },
  explain(state) {
    const { system } = state;
    const demand = system.spec.demands.find((one) => openUncalled(state, one))!;
    const name = partNamed(system, demand.valve!).name.toLowerCase();
    const { says, terminals } = explainValve(
      state,
      system.parts.findIndex(({ id }) => id === demand.valve),
    );
    return {
      says: `${saySettings(state)}, ${demand.says} is not called, yet the ${name} can stay open: it no longer shuts off the cylinder, whatever else still does. ${says}`,
      terminals,
    };
  },
};
