import { allOf, anyOf } from '../circuit/sets.ts';
import { runsOf } from '../model/system.ts';
import { decisiveLoad, explainDead } from './explain.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { sayCalled, saySettings, sayWork } from './words.ts';

/** The first part that must work for a demand that is called, and does not. */
function idle({ system, working, mustMeet }: StateView): number | undefined {
  const wanted = system.spec.demands.filter(mustMeet).flatMap((demand) => runsOf(system, demand));
  return system.parts
    .map((_, part) => part)
    .filter((part) => wanted.includes(system.parts[part]!.id) && !working(part))
    .sort((a, b) => rank(system.parts[a]!.kind.work?.does) - rank(system.parts[b]!.kind.work?.does))[0];
}
/** A boiler that does not fire says more than a pump that does not run. */
const rank = (does: string | undefined): number => (does === 'pumps' ? 1 : 0);

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
  broken: (state) => idle(state) !== undefined,
  where:
    ({ sets, demands }) =>
    ({ working }) =>
      anyOf(
        sets,
        demands.map(({ mustMeet, runs }) => {
          const all = allOf(
            sets,
            runs.map((part) => working[part]!),
          );
          return sets.minus(mustMeet, all);
        }),
      ),
  explain(state) {
    const part = idle(state)!;
    const load = decisiveLoad(state, part, false);
    const { says, ...rest } = load ? explainDead(state, load) : { says: '', terminals: [] };
    return {
      says: `${saySettings(state)}, ${sayCalled(state)} but ${sayWork(state.system, part, false)}. ${says}`.trim(),
      ...rest,
    };
  },
};
