import { anyOf } from '../circuit/sets.ts';
import type { HeatSource, System } from '../model/system.ts';
import { decisiveLoad, explainLive } from './explain.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { saySettings, sayWork } from './words.ts';

/** Heat sources that warm a store by themselves, with the number of the part. A coil's valve has a rule of its own. */
const direct = ({ spec, parts }: System) =>
  (spec.stores ?? [])
    .flatMap(({ heatSources }) => heatSources)
    .map((source) => ({ source, part: parts.findIndex(({ id }) => id === source.part) }))
    .filter(({ part }) => parts[part]!.kind.heat === 'warms');

function heatsOn({ system, config, working }: StateView) {
  const tripped = ({ cutOuts }: HeatSource) =>
    system.inputs.some((input, k) => cutOuts.includes(input.id) && (config.inputs >> k) & 1);
  return direct(system).find(({ source, part }) => tripped(source) && working(part));
}

export const cutOutStopsHeat: StateRule = {
  id: 'cut-out-stops-heat',
  title: 'A tripped cut-out stops its heat source',
  fails: 'The heat goes on though the cut-out has tripped',
  severity: 'danger',
  source: 'Approved Document G, 2015 edition with 2016 amendments, 3.28 and 3.33',
  function: 'The cut-out no longer lies in the way of the current that heats the store.',
  compare:
    'Compare the path of the live with the cut-out: it must run in by one of its terminals and out by the other.',
  scope: 'rest',
  broken: (state) => heatsOn(state) !== undefined,
  where: ({ system, sets, isSet }) => {
    const watched = direct(system).map(({ source, part }) => {
      const trips = system.inputs.map((input, k) =>
        source.cutOuts.includes(input.id) ? isSet(k, 1) : sets.none,
      );
      return { part, tripped: anyOf(sets, trips) };
    });
    return ({ working }) =>
      anyOf(
        sets,
        watched.map(({ part, tripped }) => sets.and(tripped, working[part]!)),
      );
  },
  explain(state) {
    const { part } = heatsOn(state)!;
    const load = decisiveLoad(state, part, true);
    const { says, terminals } = load ? explainLive(state, load) : { says: '', terminals: [] };
    return {
      says: `${saySettings(state)}, ${sayWork(state.system, part, true)} on. ${says}`.trim(),
      terminals,
    };
  },
};
