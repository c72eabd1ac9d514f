import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';

/** Water that these fits describe: pure, liquid, at 101.325 kPa. Up to 4 bar changes growth by less than 0.002 %. */
export const WATER_TEMPERATURE: Range = { name: 'Water temperature', unit: '°C', low: 0, high: 100 };

export const WATER_SOURCE =
  'Properties of pure water at 1 atmosphere: a fit made here to the IAPWS-95 formulation';

/** Least-squares fits to IAPWS-95 at 101.325 kPa, in powers of °C / 100. */
const DENSITY = [999.847, 6.548, -87.432, 81.599, -72.383, 40.008, -9.839];
const SPECIFIC_HEAT = [4.2189, -0.3192, 0.9639, -1.4177, 1.0984, -0.329];
/** Enthalpy at 0 °C, kJ/kg: zero is that of the liquid at its triple point. */
const ENTHALPY_AT_ZERO = 0.062;

const polynomial = (terms: readonly number[], x: number): number =>
  terms.reduceRight((sum, term) => sum * x + term, 0);

/**
 * Density, kg/m³, at 0 to 100 °C. Within 0.005 kg/m³ of IAPWS-95.
 * @throws RangeError outside that range
 */
export function density(celsius: number): number {
  return polynomial(DENSITY, within(WATER_TEMPERATURE, celsius) / 100);
}

/**
 * Specific heat at constant pressure, kJ/(kg K), at 0 to 100 °C. Within 0.001 of IAPWS-95.
 * @throws RangeError outside that range
 */
export function specificHeat(celsius: number): number {
  return polynomial(SPECIFIC_HEAT, within(WATER_TEMPERATURE, celsius) / 100);
}

/**
 * Enthalpy, kJ/kg, at 0 to 100 °C: the specific heat added up from 0 °C. Within 0.01 kJ/kg of IAPWS-95.
 * @throws RangeError outside that range
 */
export function enthalpy(celsius: number): number {
  const x = within(WATER_TEMPERATURE, celsius) / 100;
  const sum = SPECIFIC_HEAT.map((term, power) => term / (power + 1));
  return ENTHALPY_AT_ZERO + 100 * x * polynomial(sum, x);
}

/**
 * Growth in volume of water heated from `cold` to `hot`, °C, as a share of the cold volume: 0.0168 from 10 to 60 °C.
 * Below 4 °C warming shrinks water, so the share can be a little below 0.
 * @throws RangeError outside 0 to 100 °C, or when hot is below cold
 */
export function growth(cold: number, hot: number): Worked<number> {
  const [dense, thin] = [density(cold), density(hot)];
  if (hot < cold) throw new RangeError(`Hot temperature: at least the cold one, ${cold} °C, not ${hot}`);
  const value = dense / thin - 1;
  const kg = (rho: number) => figure(rho, 2, true);
  return {
    value,
    source: WATER_SOURCE,
    lines: [
      {
        what: 'Growth of the water',
        rule: `density at ${cold} °C ÷ density at ${hot} °C − 1`,
        put: `${kg(dense)} ÷ ${kg(thin)} − 1`,
        result: `${figure(value * 100, 2, true)} %`,
      },
    ],
  };
}
