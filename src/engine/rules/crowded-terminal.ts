import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

/** Conductors that one terminal takes without trouble: a strip from both sides, a part from one. Common practice. */
const MOST = { strip: 6, part: 2 } as const;

export const crowdedTerminal: WiringRule = {
  id: 'crowded-terminal',
  title: 'No terminal is crowded',
  fails: 'Too many cores in one terminal',
  severity: 'advice',
  source: 'common practice',
  function: 'More cores than a screw will hold safely meet in one terminal.',
  compare: 'Link a spare terminal beside it, and share the cores between the two.',
  find: ({ system, count }) => {
    const crowded = count.flatMap((wires, node) => {
      const { kind } = system.parts[system.partOfNode[node]!]!;
      return wires > (kind.kind === 'strip' ? MOST.strip : MOST.part) ? [node] : [];
    });
    if (crowded.length === 0) return undefined;
    const words = crowded.map((node) => `${sayNode(system, node)} (${count[node]})`);
    return {
      says: `Many cores meet in ${list(words)}: more than ${MOST.strip} on the strip, or ${MOST.part} on a part, are hard to hold.`,
      terminals: crowded.map((node) => system.nodes[node]!),
    };
  },
};
