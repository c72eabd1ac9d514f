import { figure } from '../../engine/model/figure.ts';
import { expansionVessel, PRESSURE, SYSTEM_LITRES } from '../../engine/plant/expansion-vessel.ts';
import { COLD_CELSIUS, HOT_CELSIUS } from '../../engine/plant/reheat.ts';
import { growth } from '../../engine/plant/water.ts';
import type { Calculator } from './calculator.ts';

export const expansionVesselCalculator: Calculator = {
  id: 'expansion-vessel',
  title: 'Expansion vessel',
  summary: 'The least vessel that takes up what the water grows by, with pressures made absolute.',
  also: 'pre-charge, Boyle, sealed system',
  fields: [
    { kind: 'number', id: 'litres', range: SYSTEM_LITRES, start: 210 },
    { kind: 'number', id: 'from', range: COLD_CELSIUS, start: 10 },
    { kind: 'number', id: 'to', range: HOT_CELSIUS, start: 65 },
    {
      kind: 'number',
      id: 'charge',
      range: { ...PRESSURE, name: 'Gas charge' },
      start: 3,
      hint: 'Read with no water in the vessel',
    },
    {
      kind: 'number',
      id: 'cold',
      range: { ...PRESSURE, name: 'Cold pressure' },
      start: 3,
      hint: 'Reducing valve, or fill pressure',
    },
    {
      kind: 'number',
      id: 'hot',
      range: { ...PRESSURE, name: 'Hot pressure' },
      start: 5.5,
      hint: 'Below the relief valve',
    },
  ],
  examples: [
    { name: 'Store of 300 litres', given: { litres: '300' } },
    {
      name: 'Sealed primary, 3 bar relief valve',
      given: { litres: '100', to: '85', charge: '1', cold: '1', hot: '2.65' },
    },
  ],
  cautions: [
    'Let a store get hotter than planned and the water grows more than this says. The relief valves stand behind it.',
    'Unvented hot water is work for qualified people. The maker’s instructions and local regulations win.',
    'Antifreeze makes water grow more. This is for plain water.',
  ],
  work(given) {
    const grown = growth(given.number('from'), given.number('to'));
    const vessel = expansionVessel({
      litres: given.number('litres'),
      growth: grown.value,
      charge: given.number('charge'),
      cold: given.number('cold'),
      hot: given.number('hot'),
    });
    const { least, size } = vessel.value;
    const sold = size === undefined ? 'larger than the sizes listed here' : `the next size sold is ${size} L`;
    return {
      says: `At least ${figure(least, 1, true)} L: ${sold}.`,
      lines: [...grown.lines, ...vessel.lines],
      sources: [vessel.source, grown.source],
    };
  },
};
