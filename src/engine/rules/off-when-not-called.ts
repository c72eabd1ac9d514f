import { decisiveLoad, explainLive } from './explain.ts';
import type { StateRule } from './rule.ts';
import { saySettings } from './words.ts';

export const offWhenNotCalled: StateRule = {
  id: 'off-when-not-called',
  title: 'Boiler interlock: boiler and pump are off when nothing calls',
  fails: 'Boiler or pump runs uncalled',
  severity: 'fault',
  source: 'Approved Document L, Volume 1, 2021 edition, 5.15',
  function: 'The interlock: something reaches the boiler or the pump without a call.',
  compare:
    'Compare the live path with the path a call should take. Which contact that should be in the way is not in this path?',
  scope: 'rest',
  broken: ({ system, powered, fires, pumps, called }) =>
    powered && !system.spec.demands.some(called) && (fires || pumps),
  lanes: ({ frame, demands, fires, pumps }, w) => {
    const block = w % frame.blocks;
    let called = 0;
    for (const demand of demands) called |= demand.called[block]!;
    return frame.powered[block]! & ~called & (fires[w]! | pumps[w]!);
  },
  explain(state) {
    const does = state.fires ? 'fires' : 'pumps';
    const what = state.fires ? 'the boiler fires' : 'the pump runs';
    const load = decisiveLoad(state, does, true);
    const { says, terminals } = load ? explainLive(state, load) : { says: '', terminals: [] };
    return { says: `${saySettings(state)}, no heat is called but ${what}. ${says}`.trim(), terminals };
  },
};
