import { extraLowTerminals } from './mains-on-extra-low.ts';
import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

const MAINS: ReadonlySet<string> = new Set(['line', 'neutral', 'earth', 'joint']);

export const extraLowApart: WiringRule = {
  id: 'extra-low-apart',
  title: 'Extra-low voltage does not share the strip',
  fails: 'An extra-low voltage lead lands on the mains strip',
  severity: 'fault',
  source: 'BS 7671:2018, 528.1 (bands of voltage kept apart)',
  function: 'A sensor, a bus or a volt-free pair shares an enclosure and terminals with mains.',
  compare:
    'Compare where this lead ends with where it should: straight at its own contact or sensor, by a cable of its own.',
  find: ({ system, wires }) => {
    const low = new Set(extraLowTerminals(system));
    if (low.size === 0) return undefined;
    const dutyOf = (node: number) => {
      const part = system.parts[system.partOfNode[node]!]!;
      const name = system.nodes[node]!.slice(part.id.length + 1);
      return part.kind.terminals.find(({ id }) => id === name)?.duty ?? '';
    };
    const strays = wires.flatMap((wire) => {
      const [a, b] = wire.map((end) => system.nodeOf.get(end)!) as [number, number];
      if (low.has(a) === low.has(b)) return [];
      const [stray, other] = low.has(a) ? [a, b] : [b, a];
      return MAINS.has(dutyOf(other)) ? [{ stray, other }] : [];
    });
    if (strays.length === 0) return undefined;
    const says = strays.map(
      ({ stray, other }) => `${sayNode(system, stray)} is landed in ${sayNode(system, other)}`,
    );
    const text = `${list(says)}: extra-low voltage needs terminals and a cable of its own.`;
    return {
      says: text.charAt(0).toUpperCase() + text.slice(1),
      terminals: strays.flatMap(({ stray, other }) => [system.nodes[stray]!, system.nodes[other]!]),
    };
  },
};
