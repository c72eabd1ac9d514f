import { anyOf } from '../circuit/sets.ts';
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
  broken: ({ system: { supplies }, live }) =>
    supplies.some(({ neutral, earth }) => live.line[neutral] || live.line[earth]),
  where: ({ system, sets }) => {
    const ends = system.supplies.flatMap(({ neutral, earth }) => [neutral, earth]);
    return ({ line }) => anyOf(sets, ends.map(line));
  },
  explain(state) {
    const { system, wires, config, live } = state;
    const { supplies } = system;
    const shorted = supplies.find(({ neutral }) => live.line[neutral]);
    const earthed = shorted === undefined;
    const end = (shorted ?? supplies.find(({ earth }) => live.line[earth])!)[earthed ? 'earth' : 'neutral'];
    const feed = supplies.findIndex((_, s) => live.lines[s]![end]);
    const route = routeBetween(system, wires, config, supplies[feed]!.line, end)!;
    return {
      says: `${saySettings(state)}, line is joined straight to ${earthed ? 'earth' : 'neutral'}: ${
        earthed ? 'metal parts become live' : 'the fuse blows'
      }.`,
      terminals: terminalsOf(system, route),
    };
  },
};
