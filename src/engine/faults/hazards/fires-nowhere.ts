import type { Hazard } from '../hazard.ts';

export const firesNowhere: Hazard = {
  id: 'fires-nowhere',
  title: 'The boiler fires with no open path',
  says: 'The boiler heats water that has nowhere to go: it boils in the heat exchanger or locks out.',
  beyond:
    'Outside the wiring stand the boiler’s own limit thermostat, and an automatic bypass where one is fitted.',
  scope: 'rest',
  watches: () => [{ fixed: {} }],
  there: ({ system, fires, open }) => fires && !system.spec.demands.some(open),
  lanes: ({ frame, demands, fires }, w) => {
    const place = (w / frame.blocks) | 0;
    return demands.some(({ open }) => open[place]) ? 0 : fires[w]!;
  },
};
