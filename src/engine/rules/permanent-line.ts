import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

export const permanentLine: WiringRule = {
  id: 'permanent-line',
  title: 'Programmer and boiler have a permanent line',
  fails: 'A permanent line is missing',
  severity: 'fault',
  source: 'common practice',
  function: 'A part that must always be live is not, or is switched.',
  compare:
    'Compare this terminal with the line of the supply: wires alone must join them, with no contact between.',
  find: ({ system, line }) => {
    const dead = system.parts.flatMap(({ id, kind }) =>
      (kind.permanentLine ?? [])
        .map((name) => system.nodeOf.get(`${id}/${name}`)!)
        .filter((node) => !line[node]),
    );
    if (dead.length === 0) return undefined;
    return {
      says: `No wire joins ${list(dead.map((node) => sayNode(system, node)))} to the line of the supply.`,
      terminals: dead.map((node) => system.nodes[node]!),
    };
  },
};
