import { anyOf } from '../circuit/sets.ts';
import { routeBetween, terminalsOf } from '../circuit/trace.ts';
import type { System } from '../model/system.ts';
import type { StateRule } from './rule.ts';
import { sayNode, saySettings } from './words.ts';

/** Terminals of circuits at extra-low voltage. */
export const extraLowTerminals = ({ parts, nodeOf }: System): number[] =>
  parts.flatMap(({ id, kind }) =>
    kind.terminals.filter(({ duty }) => duty === 'extra-low').map((one) => nodeOf.get(`${id}/${one.id}`)!),
  );

export const mainsOnExtraLow: StateRule = {
  id: 'mains-on-extra-low',
  title: 'Mains never reaches a volt-free pair, a sensor or a bus',
  fails: 'Mains reaches an extra-low voltage terminal',
  severity: 'danger',
  source: 'BS 7671:2018, 414 (protection by extra-low voltage); makers’ instructions',
  function:
    'These terminals belong to the part’s own low voltage. Mains destroys the board and makes leads live that people may touch.',
  compare:
    'Compare the contact that closes the pair with the strip: both its terminals must be free of line and neutral.',
  scope: 'met',
  broken: ({ system, live }) =>
    extraLowTerminals(system).some((node) => live.line[node] || live.neutral[node]),
  where: ({ system, sets }) => {
    const nodes = extraLowTerminals(system);
    return ({ line, neutral }) => anyOf(sets, [...nodes.map(line), ...nodes.map(neutral)]);
  },
  explain(state) {
    const { system, wires, config, live } = state;
    const nodes = extraLowTerminals(system);
    const hot = nodes.find((node) => live.line[node]);
    const node = hot ?? nodes.find((one) => live.neutral[one])!;
    const from = system.supplies.findIndex(
      (_, s) => (hot === undefined ? live.neutrals : live.lines)[s]![node],
    );
    const pole = system.supplies[from]![hot === undefined ? 'neutral' : 'line'];
    const route = routeBetween(system, wires, config, pole, node)!;
    return {
      says: `${saySettings(state)}, ${sayNode(system, node)} is joined to ${hot === undefined ? 'neutral' : 'line'}. It must carry extra-low voltage only.`,
      terminals: terminalsOf(system, route),
    };
  },
};
