import { openWays } from '../../plant/paths.ts';
import type { Hazard } from '../hazard.ts';

export const firesNowhere: Hazard = {
  id: 'fires-nowhere',
  title: 'The boiler fires with no open path',
  says: 'The boiler heats water that has nowhere to go: it boils in the heat exchanger or locks out.',
  beyond:
    'Outside the wiring stand the boiler’s own limit thermostat, and an automatic bypass where one is fitted.',
  scope: 'rest',
  watches: () => [{ fixed: {} }],
  there: ({ system, config, working }) => {
    const ways = openWays(system, config.place);
    return system.parts.some(
      ({ id, kind }, p) => kind.heat === 'gives' && working(p) && ways.get(id)!.size === 0,
    );
  },
  lanes: ({ frame, heat, gives }, w) => {
    const place = (w / frame.blocks) | 0;
    let nowhere = 0;
    for (let g = 0; g < gives.length; g++) if (!heat.anywhere[g]![place]) nowhere |= gives[g]![w]!;
    return nowhere;
  },
};
