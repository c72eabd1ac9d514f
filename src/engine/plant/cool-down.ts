import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { KWH_PER_LITRE_KELVIN } from './reheat.ts';
import { STORE_LITRES } from './standing-loss.ts';

/** How far a store stands above the room in the test of its loss, K: 65 °C in 20 °C (EN 15332, from memory). */
export const TEST_KELVIN = 45;

export const STANDING_LOSS: Range = {
  name: 'Standing loss',
  unit: 'kWh in 24 h',
  low: 0.1,
  high: 50,
};

const SOURCE = `Standing loss as tested at ${TEST_KELVIN} K above the room (Regulation (EU) 812/2013, EN 15332)`;

/**
 * Heat that leaves a store for each kelvin that it stands above the room, W/K.
 * @param loss standing loss at 45 K, kWh in 24 hours
 * @throws RangeError when the loss is outside 0.1 to 50
 */
export function heatLossCoefficient(loss: number): Worked<number> {
  const value = (within(STANDING_LOSS, loss) * 1000) / 24 / TEST_KELVIN;
  return {
    value,
    source: SOURCE,
    lines: [
      {
        what: 'Heat loss coefficient',
        rule: 'kWh in 24 h × 1000 ÷ 24 ÷ kelvin above the room',
        put: `${figure(loss)} × 1000 ÷ 24 ÷ ${TEST_KELVIN}`,
        result: `${figure(value, 2, true)} W/K`,
      },
    ],
  };
}

/**
 * How fast a store at 45 K above the room cools at first, K in 24 hours, the whole store at one temperature. It slows
 * as the store nears the room.
 * @throws RangeError outside 15 to 2000 litres or 0.1 to 50 kWh
 */
export function coolDown(litres: number, loss: number): Worked<number> {
  const value = within(STANDING_LOSS, loss) / (within(STORE_LITRES, litres) * KWH_PER_LITRE_KELVIN);
  return {
    value,
    source: SOURCE,
    lines: [
      {
        what: 'Cooling at first',
        rule: 'kWh in 24 h ÷ (litres × 0.001163)',
        put: `${figure(loss)} ÷ (${litres} × ${KWH_PER_LITRE_KELVIN})`,
        result: `${figure(value, 1, true)} K in 24 h`,
      },
    ],
  };
}
