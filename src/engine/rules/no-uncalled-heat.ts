import { partNamed } from '../model/system.ts';
import { decisiveLoad, explainLive } from './explain.ts';
import type { StateRule } from './rule.ts';
import { capital, list, sayPosition, saySettings } from './words.ts';

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
  broken: ({ system, powered, fires, called, open }) =>
    powered && fires && system.spec.demands.some((d) => d.coldWhenNotCalled && !called(d) && open(d)),
  lanes: ({ frame, demands, fires }, w) => {
    const block = w % frame.blocks;
    const place = (w / frame.blocks) | 0;
    let warmed = 0;
    for (let d = 0; d < demands.length; d++) {
      const { called, open } = demands[d]!;
      if (frame.system.spec.demands[d]!.coldWhenNotCalled && open[place]) warmed |= ~called[block]!;
    }
    return warmed & fires[w]! & frame.powered[block]!;
  },
  explain(state) {
    const { system, config } = state;
    const demand = system.spec.demands.find((d) => d.coldWhenNotCalled && !state.called(d) && state.open(d))!;
    const load = decisiveLoad(state, 'fires', true);
    const { says, terminals } = load ? explainLive(state, load) : { says: 'It fires.', terminals: [] };
    const valves = system.movers.map(({ part }) => sayPosition(system, system.parts[part]!.id, config));
    return {
      says: `${saySettings(state)}, ${demand.says} is not called but the boiler heats the ${partNamed(system, demand.heats).name.toLowerCase()}. ${capital(list(valves))}. The boiler fires: ${says.charAt(0).toLowerCase()}${says.slice(1)}`,
      terminals,
    };
  },
};
