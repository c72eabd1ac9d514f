import type { System } from '../../model/system.ts';
import type { Hazard } from '../hazard.ts';

/** Terminals where the metal of a part is earthed. */
const cases = (system: System): number[] =>
  system.parts.flatMap(({ id, kind }) =>
    kind.supply
      ? []
      : kind.terminals
          .filter(({ duty }) => duty === 'earth')
          .map((terminal) => system.nodeOf.get(`${id}/${terminal.id}`)!),
  );

/** With the earth whole, a live case blows the fuse at once: the hazard is a live case that nothing earths. */
export const liveCase: Hazard = {
  id: 'live-case',
  title: 'Metal that is live to the touch',
  says: 'A core touches the case of a part whose earth is lost: whoever touches it gets the full voltage.',
  beyond:
    'Outside this wiring a residual current device, where one is fitted, disconnects when somebody touches it.',
  scope: 'met',
  watches: (system) => [{ fixed: {}, nodes: cases(system) }],
  there: ({ system, live }, { nodes = [] }) =>
    !live.line[system.supply.earth] && nodes.some((node) => live.line[node]),
  lanes: ({ frame: { system, words }, nets, sweep: { line } }, w, { nodes = [] }) => {
    let touched = 0;
    for (const node of nodes) touched |= line[nets.of[node]! * words + w]!;
    return touched & ~line[nets.of[system.supply.earth]! * words + w]!;
  },
};
