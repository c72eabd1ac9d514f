import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

export const endSwitchReversed: WiringRule = {
  id: 'end-switch-reversed',
  title: 'The end switch is fed on its feed core',
  fails: 'The end switch is fed the wrong way round',
  severity: 'advice',
  source: 'common practice',
  function:
    'The end switch works either way round, but the next person expects the feed on grey and the switched line on orange.',
  compare: 'Compare the two cores of the end switch: grey should be the permanent one.',
  find: ({ system, line, node }) => {
    const swapped = system.parts.flatMap(({ id, kind: { endSwitch } }) => {
      if (!endSwitch) return [];
      const out = node(id, endSwitch.out);
      return line[out] && !line[node(id, endSwitch.feed)] ? [out] : [];
    });
    if (swapped.length === 0) return undefined;
    return {
      says: `${list(swapped.map((n) => sayNode(system, n)))} is live at all times. It works, but the colours mislead whoever comes next.`.replace(
        /^./,
        (first) => first.toUpperCase(),
      ),
      terminals: swapped.map((n) => system.nodes[n]!),
    };
  },
};
