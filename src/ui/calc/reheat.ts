import { figure } from '../../engine/model/figure.ts';
import { FLOW_DROP, flowForPower } from '../../engine/plant/coil-flow.ts';
import {
  COLD_CELSIUS,
  HEAT_KILOWATTS,
  HEAT_MINUTES,
  HEATED_LITRES,
  HOT_CELSIUS,
  heatUpEnergyByRule,
  heatUpPower,
  heatUpTime,
} from '../../engine/plant/reheat.ts';
import type { Calculator } from './calculator.ts';

export const reheatCalculator: Calculator = {
  id: 'reheat',
  title: 'Reheat time and coil power',
  summary: 'How long a store takes to heat, the power that makes it quicker, and the flow the coil needs.',
  also: 'recovery time, heat-up, kWh, immersion',
  fields: [
    { kind: 'number', id: 'litres', range: HEATED_LITRES, start: 210 },
    { kind: 'number', id: 'from', range: COLD_CELSIUS, start: 10 },
    { kind: 'number', id: 'to', range: HOT_CELSIUS, start: 60 },
    {
      kind: 'number',
      id: 'power',
      range: HEAT_KILOWATTS,
      start: 20,
      hint: 'The smaller of boiler and coil',
    },
    { kind: 'number', id: 'drop', range: FLOW_DROP, start: 20 },
    { kind: 'number', id: 'minutes', range: { ...HEAT_MINUTES, name: 'Time wanted' }, start: 30 },
  ],
  examples: [
    { name: 'The same store on a 3 kW immersion', given: { power: '3' } },
    {
      name: '1000 litres in 45 minutes',
      given: { litres: '1000', from: '5', minutes: '45', power: '85' },
    },
  ],
  cautions: [
    'Losses are left out, and a coil gives less as the store warms. Real times are longer.',
    'Store hot water at 60 °C or more against legionella; blend it down at the tap where people could scald.',
    'Fitting an immersion heater needs a circuit of its own. Never the 3 A spur of the controls.',
  ],
  work(given) {
    const heating = { litres: given.number('litres'), from: given.number('from'), to: given.number('to') };
    const [kilowatts, minutes] = [given.number('power'), given.number('minutes')];
    const time = heatUpTime(heating, kilowatts);
    const needed = heatUpPower(heating, minutes);
    const flow = flowForPower(kilowatts, given.number('drop'));
    const byRule = heatUpEnergyByRule(heating);
    return {
      says:
        `${figure(time.value, 0)} minutes with ${kilowatts} kW. ` +
        `To be hot in ${minutes} minutes it takes ${figure(needed.value, 1)} kW.`,
      lines: [
        ...time.lines,
        ...needed.lines.slice(-1),
        ...flow.lines,
        ...byRule.lines.map((line) => ({ ...line, what: 'Energy by the trade’s short rule' })),
      ],
      sources: [time.source, flow.source, byRule.source],
    };
  },
};
