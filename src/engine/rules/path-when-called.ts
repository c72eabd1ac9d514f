import { anyOf } from '../circuit/sets.ts';
import { openPaths } from '../plant/paths.ts';
import { blockingValve, explainValve } from './explain.ts';
import type { StateRule } from './rule.ts';
import { saySettings } from './words.ts';

export const pathWhenCalled: StateRule = {
  id: 'path-when-called',
  title: 'Water can flow wherever heat is called',
  fails: 'Heat is called but the way is shut',
  severity: 'fault',
  source: 'common practice',
  function: 'A valve does not open the way that the call needs.',
  compare:
    'Compare the live that moves the valve with the call: which of the two is missing, and from which terminal on?',
  scope: 'rest',
  broken: ({ system, called, open }) => system.spec.demands.some((demand) => called(demand) && !open(demand)),
  where: ({ sets, demands }) => {
    const blocked = demands.map(({ called, open }) => sets.minus(called, open));
    const broken = anyOf(sets, blocked);
    return () => broken;
  },
  explain(state) {
    const demand = state.system.spec.demands.find((d) => state.called(d) && !state.open(d))!;
    const valve = blockingValve(state, demand, (place) => openPaths(state.system, place).has(demand.heats));
    const { says, ...rest } = valve ? explainValve(state, valve.part) : { says: '', terminals: [] };
    return {
      says: `${saySettings(state)}, ${demand.says} is called but no way is open for it. ${says}`.trim(),
      ...rest,
    };
  },
};
