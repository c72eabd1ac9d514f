import { routeBetween, terminalsOf } from '../circuit/trace.ts';
import type { StateRule } from './rule.ts';
import { saySettings } from './words.ts';

export const noShort: StateRule = {
  id: 'no-short',
  title: 'Line never meets neutral or earth',
  fails: 'Line meets neutral or earth',
  severity: 'danger',
  source: 'BS 7671:2018, part 4 (protection against fault current); common practice',
  function:
    'Line is joined to neutral or to earth with no load between: the fuse blows, or metal becomes live.',
  compare: 'Compare the cores landed along this path: one of them belongs to another terminal.',
  scope: 'met',
  broken: ({ system: { supply }, live }) => live.line[supply.neutral]! || live.line[supply.earth]!,
  lanes: ({ frame, nets, sweep }, w) => {
    const { supply } = frame.system;
    const lanes = (node: number) => sweep.line[nets.of[node]! * frame.words + w]!;
    return lanes(supply.neutral) | lanes(supply.earth);
  },
  explain(state) {
    const { system, wires, config, live } = state;
    const { supply } = system;
    const earthed = !live.line[supply.neutral];
    const route = routeBetween(system, wires, config, supply.line, earthed ? supply.earth : supply.neutral)!;
    return {
      says: `${saySettings(state)}, line is joined straight to ${earthed ? 'earth' : 'neutral'}: ${
        earthed ? 'metal parts become live' : 'the fuse blows'
      }.`,
      terminals: terminalsOf(system, route),
    };
  },
};
