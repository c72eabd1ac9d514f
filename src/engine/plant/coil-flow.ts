import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { HEAT_KILOWATTS } from './reheat.ts';

export const FLOW_DROP: Range = { name: 'Drop from flow to return', unit: 'K', low: 1, high: 50 };
export const FLOW_RATE: Range = { name: 'Flow rate', unit: 'L/min', low: 0.1, high: 1000 };

/** Mean specific heat, kJ/(kg K): within 0.1 % from 10 to 60 °C (IAPWS-95), with a litre taken as a kilogram. */
const MEAN_HEAT = 4.186;
const SOURCE = `Heat balance of the coil’s water: ${MEAN_HEAT} kJ for each litre and kelvin`;

/**
 * Water that must flow to carry a power, L/min.
 * @param kilowatts 0.1 to 500 kW
 * @param drop temperature lost between flow and return, 1 to 50 K
 * @throws RangeError for a value out of range
 */
export function flowForPower(kilowatts: number, drop: number): Worked<number> {
  const value = (within(HEAT_KILOWATTS, kilowatts) * 60) / (MEAN_HEAT * within(FLOW_DROP, drop));
  return {
    value,
    source: SOURCE,
    lines: [
      {
        what: 'Flow through the coil',
        rule: 'kW × 60 ÷ (4.186 × drop)',
        put: `${kilowatts} × 60 ÷ (${MEAN_HEAT} × ${drop})`,
        result: `${figure(value, 1, true)} L/min`,
      },
    ],
  };
}

/**
 * Power that a flow of water gives up, kW.
 * @param flow 0.1 to 1000 L/min
 * @param drop temperature lost between flow and return, 1 to 50 K
 * @throws RangeError for a value out of range
 */
export function powerForFlow(flow: number, drop: number): Worked<number> {
  const value = (within(FLOW_RATE, flow) * MEAN_HEAT * within(FLOW_DROP, drop)) / 60;
  return {
    value,
    source: SOURCE,
    lines: [
      {
        what: 'Power of the coil',
        rule: 'L/min × 4.186 × drop ÷ 60',
        put: `${flow} × ${MEAN_HEAT} × ${drop} ÷ 60`,
        result: `${figure(value, 1, true)} kW`,
      },
    ],
  };
}
