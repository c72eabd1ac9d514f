import { anyOf } from '../circuit/sets.ts';
import { routeBetween, terminalsOf } from '../circuit/trace.ts';
import type { System } from '../model/system.ts';
import type { StateRule } from './rule.ts';
import { sayNode, saySettings } from './words.ts';

/** Earth terminals of parts, the supplies' own apart: line on those is a short. */
const earths = ({ parts, nodeOf }: System): number[] =>
  parts.flatMap(({ id, kind }) =>
    kind.supply
      ? []
      : kind.terminals.filter(({ duty }) => duty === 'earth').map((one) => nodeOf.get(`${id}/${one.id}`)!),
  );

export const greenYellowLive: StateRule = {
  id: 'green-yellow-live',
  title: 'A green and yellow core is never live',
  fails: 'A green and yellow core is live',
  severity: 'danger',
  source: 'BS 7671:2018, 514.4.2 (green and yellow for protection alone)',
  function: 'The core that should make metal safe makes it live.',
  compare:
    'Compare where this green and yellow core is landed with the others: they all belong on the earth.',
  scope: 'met',
  broken: ({ system, live }) => earths(system).some((node) => live.line[node] && !live.earth[node]),
  where: ({ system, sets }) => {
    const nodes = earths(system);
    return ({ line, earth }) =>
      anyOf(
        sets,
        nodes.map((node) => sets.minus(line(node), earth(node))),
      );
  },
  explain(state) {
    const { system, wires, config, live } = state;
    const node = earths(system).find((one) => live.line[one] && !live.earth[one])!;
    const feed = system.supplies[live.lines.findIndex((line) => line[node])]!;
    return {
      says: `${saySettings(state)}, ${sayNode(system, node)} is live, and so is the metal it is fixed to.`,
      terminals: terminalsOf(system, routeBetween(system, wires, config, feed.line, node)!),
    };
  },
};
