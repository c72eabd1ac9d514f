import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';

/** Pressure of the air, bar. Gauges read from here; Boyle's law does not. */
export const ATMOSPHERE = 1.013;

export const SYSTEM_LITRES: Range = { name: 'Water in the system', unit: 'litres', low: 1, high: 10_000 };
export const GROWTH: Range = { name: 'Growth of the water', unit: '', low: 0.0001, high: 0.05 };
export const PRESSURE: Range = { name: 'Pressure', unit: 'bar gauge', low: 0, high: 10 };

/** Sizes sold, litres (common practice; makers' lists differ). */
const SIZES = [8, 12, 18, 24, 35, 50, 60, 80, 100, 150, 200, 300, 500];

/** What a vessel has to cope with. Pressures are bar gauge, as a gauge shows them. */
export interface VesselDuty {
  readonly litres: number;
  /** Share by which the water grows, such as 0.0195 from 10 to 65 °C. */
  readonly growth: number;
  /** Gas charge, set with the vessel empty of water. */
  readonly charge: number;
  /** Water pressure cold: a sealed primary's fill, or the reducing valve's setting. At least the charge. */
  readonly cold: number;
  /** Highest pressure allowed hot, below the relief valve. */
  readonly hot: number;
}

/** Litres the water grows by, the least vessel that takes them, and the next size sold, if there is one. */
export interface VesselSize {
  readonly expansion: number;
  readonly least: number;
  readonly size: number | undefined;
}

function check({ litres, growth, charge, cold, hot }: VesselDuty): void {
  within(SYSTEM_LITRES, litres);
  within(GROWTH, growth);
  for (const [name, bar] of Object.entries({ charge, cold, hot }))
    within({ ...PRESSURE, name: `Pressure, ${name}` }, bar);
  if (cold < charge) throw new RangeError(`Cold pressure: at least the charge, ${charge} bar, not ${cold}`);
  if (hot <= cold) throw new RangeError(`Hot pressure: above the cold pressure, ${cold} bar, not ${hot}`);
}

/**
 * Expansion vessel by Boyle's law, pressures absolute: the gas fills charge ÷ cold of the vessel when cold and
 * charge ÷ hot when hot; the growth goes in between. With charge = cold this is growth × litres ÷ (1 − cold ÷ hot).
 * @throws RangeError for a value out of range or pressures out of order
 */
export function expansionVessel(duty: VesselDuty): Worked<VesselSize> {
  check(duty);
  const { litres, growth, charge, cold, hot } = duty;
  const [chargeAbs, coldAbs, hotAbs] = [charge + ATMOSPHERE, cold + ATMOSPHERE, hot + ATMOSPHERE];
  const expansion = growth * litres;
  const share = chargeAbs / coldAbs - chargeAbs / hotAbs;
  const least = expansion / share;
  const size = SIZES.find((size) => size >= least);
  const bar = (value: number) => figure(value, 3, true);
  return {
    value: { expansion, least, size },
    source: 'Form of BS 7074-1 and BS EN 12828 (from memory); sizes sold are common practice',
    lines: [
      {
        what: 'Expansion',
        rule: 'growth × litres',
        put: `${figure(growth, 4)} × ${litres}`,
        result: `${figure(expansion, 2, true)} L`,
      },
      ...(
        [
          ['charge', charge],
          ['cold', cold],
          ['hot', hot],
        ] as const
      ).map(([name, gauge]) => ({
        what: `Absolute pressure, ${name}`,
        rule: 'gauge + air',
        put: `${gauge} + ${ATMOSPHERE}`,
        result: `${bar(gauge + ATMOSPHERE)} bar`,
      })),
      {
        what: 'Share of the vessel that can fill',
        rule: 'charge ÷ cold − charge ÷ hot, absolute',
        put: `${bar(chargeAbs)} ÷ ${bar(coldAbs)} − ${bar(chargeAbs)} ÷ ${bar(hotAbs)}`,
        result: figure(share, 3, true),
      },
      {
        what: 'Least vessel',
        rule: 'expansion ÷ share',
        put: `${figure(expansion, 2, true)} ÷ ${figure(share, 3, true)}`,
        result: `${figure(least, 1, true)} L`,
      },
      {
        what: 'Next size sold',
        rule: `first of ${SIZES.slice(0, 6).join(', ')} … that is big enough`,
        put: `at least ${figure(least, 1, true)} L`,
        result: size === undefined ? `none up to ${SIZES.at(-1)} L` : `${size} L`,
        lookedUp: true,
      },
    ],
  };
}
