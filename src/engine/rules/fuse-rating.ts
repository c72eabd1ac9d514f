import { figure } from '../model/figure.ts';
import { allAmps } from './currents.ts';
import type { WiringRule } from './rule.ts';

export const fuseRating: WiringRule = {
  id: 'fuse-rating',
  title: 'The loads together stay below the fuse',
  fails: 'The loads are too much for the fuse',
  severity: 'fault',
  source:
    'BS 7671:2018, 433.1.1 (design current not above the rating of the fuse); currents from the loads’ own figures',
  function: 'More current is drawn from the supply than its fuse is made for.',
  compare: 'Compare the heaviest load with the fuse: an immersion heater needs a circuit of its own.',
  find: ({ system, amps: reach }) => {
    for (const { part, out } of system.supplies) {
      const { fuse } = system.parts[part]!.kind.supply!;
      if (fuse === undefined || allAmps(system) <= fuse) continue;
      const amps = reach(out.line, -1);
      if (amps <= fuse) continue;
      return {
        says: `The loads on the ${system.parts[part]!.name.toLowerCase()} may draw ${figure(amps, 1)} A together, and its fuse is ${figure(fuse, 0)} A.`,
        terminals: [system.nodes[out.line]!],
      };
    }
    return undefined;
  },
};
