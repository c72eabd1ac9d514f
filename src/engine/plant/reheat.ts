import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { density, enthalpy, WATER_SOURCE } from './water.ts';

/** Water to be heated: litres measured cold, and °C before and after. */
export interface Heating {
  readonly litres: number;
  readonly from: number;
  readonly to: number;
}

export const HEATED_LITRES: Range = { name: 'Water heated', unit: 'litres', low: 1, high: 10_000 };
export const COLD_CELSIUS: Range = { name: 'Cold water', unit: '°C', low: 0, high: 95 };
export const HOT_CELSIUS: Range = { name: 'Hot water', unit: '°C', low: 1, high: 100 };
export const HEAT_KILOWATTS: Range = { name: 'Heat input', unit: 'kW', low: 0.1, high: 500 };
export const HEAT_MINUTES: Range = { name: 'Time allowed', unit: 'minutes', low: 1, high: 2880 };

/** The trade's constant: kWh to warm a litre by a kelvin (4.187 ÷ 3600). */
export const KWH_PER_LITRE_KELVIN = 0.001163;

/** A way to find the energy, kWh: from the properties of water, or by the trade's constant. */
export type EnergyOf = (heating: Heating) => Worked<number>;

function check({ litres, from, to }: Heating): void {
  within(HEATED_LITRES, litres);
  within(COLD_CELSIUS, from);
  within(HOT_CELSIUS, to);
  if (to <= from) throw new RangeError(`Hot water: above the cold water, ${from} °C, not ${to}`);
}

/**
 * Energy to heat water, kWh, from its density and enthalpy. The whole store at one temperature; no losses.
 * @throws RangeError for litres or temperatures out of range, or hot not above cold
 */
export function heatUpEnergy(heating: Heating): Worked<number> {
  check(heating);
  const { litres, from, to } = heating;
  const kilograms = (litres * density(from)) / 1000;
  const rise = enthalpy(to) - enthalpy(from);
  const value = (kilograms * rise) / 3600;
  return {
    value,
    source: `${WATER_SOURCE}; one temperature throughout, no losses`,
    lines: [
      {
        what: 'Mass of water',
        rule: `litres × density at ${from} °C ÷ 1000`,
        put: `${litres} × ${figure(density(from), 2, true)} ÷ 1000`,
        result: `${figure(kilograms, 2, true)} kg`,
      },
      {
        what: 'Heat for each kilogram',
        rule: `enthalpy at ${to} °C − enthalpy at ${from} °C`,
        put: `${figure(enthalpy(to), 2, true)} − ${figure(enthalpy(from), 2, true)}`,
        result: `${figure(rise, 2, true)} kJ/kg`,
      },
      {
        what: 'Energy',
        rule: 'mass × heat for each kilogram ÷ 3600',
        put: `${figure(kilograms, 2, true)} × ${figure(rise, 2, true)} ÷ 3600`,
        result: `${figure(value, 2, true)} kWh`,
      },
    ],
  };
}

/**
 * Energy to heat water, kWh, by the trade's constant: within 0.4 % of `heatUpEnergy` for water that starts at 5 to 15 °C.
 * @throws RangeError as `heatUpEnergy`
 */
export function heatUpEnergyByRule(heating: Heating): Worked<number> {
  check(heating);
  const { litres, from, to } = heating;
  const value = KWH_PER_LITRE_KELVIN * litres * (to - from);
  return {
    value,
    source: 'Published sizing rule of a calorifier supplier: 0.001163 kWh for each litre and kelvin',
    lines: [
      {
        what: 'Energy',
        rule: '0.001163 × litres × rise',
        put: `${KWH_PER_LITRE_KELVIN} × ${litres} × (${to} − ${from})`,
        result: `${figure(value, 2, true)} kWh`,
      },
    ],
  };
}

/**
 * Time to heat water with a steady input, minutes.
 * @param kilowatts heat that reaches the water, 0.1 to 500 kW: the smaller of boiler output and coil rating
 * @throws RangeError for a value out of range
 */
export function heatUpTime(
  heating: Heating,
  kilowatts: number,
  energyOf: EnergyOf = heatUpEnergy,
): Worked<number> {
  const energy = energyOf(heating);
  const value = (energy.value * 60) / within(HEAT_KILOWATTS, kilowatts);
  const line = {
    what: 'Time',
    rule: 'energy × 60 ÷ heat input',
    put: `${figure(energy.value)} × 60 ÷ ${kilowatts}`,
    result: `${figure(value, 1, true)} min`,
  };
  return { value, source: energy.source, lines: [...energy.lines, line] };
}

/**
 * Heat input that warms water in the time given, kW.
 * @param minutes 1 to 2880
 * @throws RangeError for a value out of range
 */
export function heatUpPower(
  heating: Heating,
  minutes: number,
  energyOf: EnergyOf = heatUpEnergy,
): Worked<number> {
  const energy = energyOf(heating);
  const value = (energy.value * 60) / within(HEAT_MINUTES, minutes);
  const line = {
    what: 'Heat input needed',
    rule: 'energy × 60 ÷ minutes',
    put: `${figure(energy.value)} × 60 ÷ ${minutes}`,
    result: `${figure(value, 1, true)} kW`,
  };
  return { value, source: energy.source, lines: [...energy.lines, line] };
}
