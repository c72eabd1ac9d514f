import { anyOf } from '../circuit/sets.ts';
import type { StateRule } from './rule.ts';
import { sayPosition, saySettings } from './words.ts';

export const shutsWithoutSupply: StateRule = {
  id: 'shuts-without-supply',
  title: 'The valve in the coil flow shuts when the supply is lost',
  fails: 'The valve in the coil flow stays open without supply',
  severity: 'danger',
  source: 'Approved Document G, 2015 edition with 2016 amendments, 3.31',
  function: 'The valve does not shut by itself when its supply is lost.',
  compare: 'Compare the kind of valve with the rule: a spring must shut it, not a motor.',
  scope: 'rest',
  broken: ({ system, powered, shut }) => !powered && system.spec.demands.some((demand) => !shut(demand)),
  where: ({ sets, powered, demands }) => {
    const open = demands.map(({ shut }) => sets.not(shut));
    const broken = sets.minus(anyOf(sets, open), powered);
    return () => broken;
  },
  explain(state) {
    const { system, shut, config } = state;
    const { valve } = system.spec.demands.find((demand) => !shut(demand))!;
    return { says: `${saySettings(state)}, ${sayPosition(system, valve!, config)}.`, terminals: [] };
  },
};
