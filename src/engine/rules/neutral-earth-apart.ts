import { anyOf } from '../circuit/sets.ts';
import { routeBetween, terminalsOf } from '../circuit/trace.ts';
import type { StateRule } from './rule.ts';
import { saySettings } from './words.ts';

export const neutralEarthApart: StateRule = {
  id: 'neutral-earth-apart',
  title: 'Neutral and earth are not joined',
  fails: 'Neutral and earth are joined',
  severity: 'danger',
  source: 'BS 7671:2018, 411 and 544 (separate neutral and protective conductors); common practice',
  function: 'Neutral is joined to earth, so the current of the loads flows in the earth.',
  compare: 'Compare the blue cores with the green and yellow ones: somewhere one of each meets.',
  scope: 'met',
  broken: ({ system: { supplies }, live }) => supplies.some(({ earth }) => live.neutral[earth]),
  where: ({ system, sets }) => {
    const ends = system.supplies.map(({ earth }) => earth);
    return ({ neutral }) => anyOf(sets, ends.map(neutral));
  },
  explain(state) {
    const { system, wires, config, live } = state;
    const { earth } = system.supplies.find((supply) => live.neutral[supply.earth])!;
    const { neutral } = system.supplies.find((_, s) => live.neutrals[s]![earth])!;
    const route = routeBetween(system, wires, config, neutral, earth)!;
    return {
      says: `${saySettings(state)}, neutral is joined to earth.`,
      terminals: terminalsOf(system, route),
    };
  },
};
