import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

export const earthed: WiringRule = {
  id: 'earthed',
  title: 'Boiler, pump and valves are earthed',
  fails: 'A metal part has no earth',
  severity: 'danger',
  source: 'BS 7671:2018, 411.3.1 (protective earthing)',
  function: 'A metal part has no earth: after a fault it could be live to the touch.',
  compare:
    'Compare the green and yellow cores with the parts that have one: which is not joined, by wires alone, to the earth of the supply?',
  find: ({ system, earth }) => {
    const bare = system.parts.flatMap(({ id, kind }) =>
      kind.terminals
        .filter(({ duty }) => duty === 'earth')
        .map((terminal) => system.nodeOf.get(`${id}/${terminal.id}`)!)
        .filter((node) => !earth[node]),
    );
    if (bare.length === 0) return undefined;
    return {
      says: `No wire joins ${list(bare.map((node) => sayNode(system, node)))} to the earth of the supply.`,
      terminals: bare.map((node) => system.nodes[node]!),
    };
  },
};
