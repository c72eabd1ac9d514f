import type { System } from '../model/system.ts';
import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

/** Neutral terminals of the loads a system cannot do without, or of those it can. */
export function neutralTerminals(system: System, optional: boolean): number[] {
  return system.parts.flatMap(({ id, kind }) => {
    const wanted = (kind.loads ?? []).filter((load) => (load.optional ?? false) === optional);
    return kind.terminals
      .filter(
        (terminal) =>
          terminal.duty === 'neutral' && wanted.some(({ between }) => between.includes(terminal.id)),
      )
      .map((terminal) => system.nodeOf.get(`${id}/${terminal.id}`)!);
  });
}

export const neutralDirect: WiringRule = {
  id: 'neutral-direct',
  title: 'Every neutral goes straight back to the supply',
  fails: 'A neutral is missing',
  severity: 'fault',
  source: 'BS 7671:2018, 132.14.2 (no single-pole switching in a neutral)',
  function: 'A load has no neutral, or a contact lies in it.',
  compare:
    'Compare the blue cores with each other: wires alone must join every one of them to the neutral of the supply.',
  find: ({ system, neutral }) => {
    const lost = neutralTerminals(system, false).filter((node) => !neutral[node]);
    if (lost.length === 0) return undefined;
    return {
      says: `No wire joins ${list(lost.map((node) => sayNode(system, node)))} to the neutral of the supply.`,
      terminals: lost.map((node) => system.nodes[node]!),
    };
  },
};
