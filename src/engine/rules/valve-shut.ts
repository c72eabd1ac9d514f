import { partNamed } from '../model/system.ts';
import { explainValve } from './explain.ts';
import type { StateRule } from './rule.ts';
import { saySettings } from './words.ts';

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
  broken: ({ system, powered, called, shut }) =>
    powered && system.spec.demands.some((demand) => !called(demand) && !shut(demand)),
  lanes: ({ frame, demands }, w) => {
    const block = w % frame.blocks;
    const place = (w / frame.blocks) | 0;
    let open = 0;
    for (const { called, shut } of demands) if (!shut[place]) open |= ~called[block]!;
    return open & frame.powered[block]!;
  },
  explain(state) {
    const { system, called, shut } = state;
    const demand = system.spec.demands.find((d) => !called(d) && !shut(d))!;
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
