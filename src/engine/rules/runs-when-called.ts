import { decisiveLoad, explainDead } from './explain.ts';
import type { StateRule } from './rule.ts';
import { sayCalled, saySettings } from './words.ts';

export const runsWhenCalled: StateRule = {
  id: 'runs-when-called',
  title: 'The boiler fires and the pump runs when heat is called',
  fails: 'Heat is called but does not come',
  severity: 'fault',
  source: 'common practice',
  function: 'A call for heat does not get through to the boiler and the pump.',
  compare:
    'Follow the call one contact at a time: programmer, thermostat, cut-out, valve, end switch. Compare what each hands on with what the next one needs.',
  scope: 'rest',
  broken: ({ system, powered, fires, pumps, mustMeet }) =>
    powered && system.spec.demands.some(mustMeet) && !(fires && pumps),
  lanes: ({ frame, demands, fires, pumps }, w) => {
    const block = w % frame.blocks;
    let called = 0;
    for (const { mustMeet } of demands) called |= mustMeet[block]!;
    return called & frame.powered[block]! & ~(fires[w]! & pumps[w]!);
  },
  explain(state) {
    const does = state.fires ? 'pumps' : 'fires';
    const what = state.fires ? 'the pump does not run' : 'the boiler does not fire';
    const load = decisiveLoad(state, does, false);
    const { says, ...rest } = load ? explainDead(state, load) : { says: '', terminals: [] };
    return {
      says: `${saySettings(state)}, ${sayCalled(state)} is called but ${what}. ${says}`.trim(),
      ...rest,
    };
  },
};
