import { neutralTerminals } from './neutral-direct.ts';
import type { WiringRule } from './rule.ts';
import { list, sayNode } from './words.ts';

export const acceleratorNeutral: WiringRule = {
  id: 'accelerator-neutral',
  title: 'The room thermostat has its neutral',
  fails: 'The room thermostat has no neutral',
  severity: 'advice',
  source: 'common practice',
  function:
    'The small heater inside the thermostat does not work, so the room temperature swings more widely.',
  compare: 'Compare this terminal with the other neutrals.',
  find: ({ system, neutral }) => {
    const lost = neutralTerminals(system, true).filter((node) => !neutral[node]);
    if (lost.length === 0) return undefined;
    return {
      says: `${list(lost.map((node) => sayNode(system, node)))} is not joined to neutral. The thermostat still works, but it lets the room swing further.`.replace(
        /^./,
        (first) => first.toUpperCase(),
      ),
      terminals: lost.map((node) => system.nodes[node]!),
    };
  },
};
