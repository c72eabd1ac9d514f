import { anyOf } from '../circuit/sets.ts';
import { runsOf } from '../model/system.ts';
import { decisiveLoad, explainLive } from './explain.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { sayNotCalled, saySettings, sayWork } from './words.ts';

/** The first part that works though no demand that it may serve is called. */
const uncalled = ({ system, working, called }: StateView): number | undefined =>
  system.parts
    .map((_, part) => part)
    .find(
      (part) =>
        working(part) &&
        !system.spec.demands.some((demand) => {
          const { id } = system.parts[part]!;
          return called(demand) && (runsOf(system, demand).includes(id) || demand.may?.includes(id));
        }),
    );

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
  broken: (state) => uncalled(state) !== undefined,
  where: ({ system, sets, demands }) => {
    const asked = system.parts.map((_, part) => {
      const may = demands.filter(({ allowed }) => allowed.includes(part));
      return anyOf(
        sets,
        may.map(({ called }) => called),
      );
    });
    return ({ working }) =>
      anyOf(
        sets,
        working.map((works, part) => sets.minus(works, asked[part]!)),
      );
  },
  explain(state) {
    const part = uncalled(state)!;
    const load = decisiveLoad(state, part, true);
    const { says, terminals } = load ? explainLive(state, load) : { says: '', terminals: [] };
    return {
      says: `${saySettings(state)}, ${sayNotCalled(state, part)} but ${sayWork(state.system, part, true)}. ${says}`.trim(),
      terminals,
    };
  },
};
