import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';

/** Sizes asked of the formula. The printed table runs from 50 to 500 litres; beyond it the formula alone speaks. */
export const STORE_LITRES: Range = { name: 'Store volume', unit: 'litres', low: 15, high: 2000 };

const SOURCE = 'Approved Document L, volume 1 (England), 2021 edition, Table 4.5 and its note 1';

/** Table 4.5: litres, then the most heat a store may lose, kWh in 24 hours. */
export const PRINTED_LIMITS: ReadonlyMap<number, number> = new Map([
  [50, 1.03],
  [100, 1.49],
  [150, 1.88],
  [200, 2.06],
  [250, 2.22],
  [300, 2.36],
  [350, 2.48],
  [400, 2.59],
  [500, 2.8],
]);

/** Note 1 to the table: W, from litres. The printed 50 and 100 litre rows are lower than this gives. */
const formulaWatts = (litres: number): number => 16.66 + 8.33 * litres ** 0.4;

/**
 * The most heat that a hot water store may lose standing, kWh in 24 hours. A size that the table prints takes the
 * printed value, which wins over the formula; any other takes the formula of note 1.
 * @param litres 15 to 2000
 * @throws RangeError outside that range
 */
export function standingLossLimit(litres: number): Worked<number> {
  const printed = PRINTED_LIMITS.get(within(STORE_LITRES, litres));
  if (printed !== undefined) {
    const result = `${figure(printed, 2, true)} kWh in 24 h`;
    return {
      value: printed,
      source: SOURCE,
      lines: [
        { what: 'Limit', rule: 'printed in the table', put: `${litres} litres`, result, lookedUp: true },
      ],
    };
  }
  const watts = formulaWatts(litres);
  const value = (watts * 24) / 1000;
  return {
    value,
    source: SOURCE,
    lines: [
      {
        what: 'Loss allowed',
        rule: '16.66 + 8.33 × litres to the power 0.4',
        put: `16.66 + 8.33 × ${litres}^0.4`,
        result: `${figure(watts, 1)} W`,
      },
      {
        what: 'Limit',
        rule: 'watts × 24 h ÷ 1000',
        put: `${figure(watts, 1)} × 24 ÷ 1000`,
        result: `${figure(value, 2, true)} kWh in 24 h`,
      },
    ],
  };
}
