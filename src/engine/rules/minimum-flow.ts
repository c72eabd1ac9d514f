import { anyOf } from '../circuit/sets.ts';
import { openWays } from '../plant/paths.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { capital, list, sayPosition, saySettings, sayWork } from './words.ts';

/** A part that needs water to move, while it fires or a pump runs with every way shut. */
function starved({
  system,
  config,
  working,
}: StateView): { readonly part: number; readonly works: number } | undefined {
  const ways = openWays(system, config.place);
  for (const [part, { id, kind }] of system.parts.entries()) {
    if (!kind.minimumFlow || ways.get(id)!.size > 0) continue;
    const works = system.parts.findIndex(
      (one, p) => (p === part || one.kind.work?.does === 'pumps') && working(p),
    );
    if (works >= 0) return { part, works };
  }
  return undefined;
}

export const minimumFlow: StateRule = {
  id: 'minimum-flow',
  title: 'Water can move whenever the pump runs, overrun included',
  fails: 'The pump runs against shut valves',
  severity: 'fault',
  source: 'Approved Document L, Volume 1, 2021 edition, 5.18',
  function: 'The heat left in the boiler must be carried away after the call ends, and every way is shut.',
  compare:
    'Compare the moment when the valves have shut with the time that the pump still runs. Is there a bypass?',
  scope: 'met',
  broken: (state) => starved(state) !== undefined,
  where: ({ system, sets, anyWay }) => {
    const pumps = system.parts.flatMap(({ kind }, part) => (kind.work?.does === 'pumps' ? [part] : []));
    const needy = system.parts.flatMap(({ id, kind }, part) =>
      kind.minimumFlow ? [{ running: [part, ...pumps], way: anyWay.get(id)! }] : [],
    );
    return ({ working }) =>
      anyOf(
        sets,
        needy.map(({ running, way }) => {
          const any = anyOf(
            sets,
            running.map((part) => working[part]!),
          );
          return sets.minus(any, way);
        }),
      );
  },
  explain(state) {
    const { system, config } = state;
    const { part, works } = starved(state)!;
    const valves = system.movers.map((mover) => sayPosition(system, system.parts[mover.part]!.id, config));
    return {
      says: `${saySettings(state)}, ${sayWork(system, works, true)} but no way is open for the water of the ${system.parts[part]!.name.toLowerCase()}. ${capital(list(valves))}.`,
      terminals: [],
    };
  },
};
