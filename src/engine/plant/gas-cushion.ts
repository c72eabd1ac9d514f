import { figure } from '../model/figure.ts';
import { within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { ATMOSPHERE, PRESSURE, SYSTEM_LITRES } from './expansion-vessel.ts';

/**
 * Pressure of a vessel's gas once water has taken up part of the vessel, bar gauge, at one temperature (Boyle).
 * @param charge bar gauge with no water in the vessel
 * @param litres size of the vessel
 * @param taken litres of water that came in, less than the size
 * @throws RangeError for a value out of range
 */
export function cushionPressure(charge: number, litres: number, taken: number): Worked<number> {
  within(PRESSURE, charge);
  within(SYSTEM_LITRES, litres);
  if (!(taken >= 0 && taken < litres)) {
    throw new RangeError(`Water taken up: from 0 to less than ${litres} litres, not ${taken}`);
  }
  const value = ((charge + ATMOSPHERE) * litres) / (litres - taken) - ATMOSPHERE;
  return {
    value,
    source: 'Boyle’s law, pressures absolute',
    lines: [
      {
        what: 'Pressure of the gas',
        rule: '(charge + air) × vessel ÷ gas left − air',
        put: `(${charge} + ${ATMOSPHERE}) × ${litres} ÷ ${figure(litres - taken)} − ${ATMOSPHERE}`,
        result: `${figure(value, 1, true)} bar gauge`,
      },
    ],
  };
}
