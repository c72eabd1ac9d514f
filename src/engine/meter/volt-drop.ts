import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { milliohmsPerMetre, RESISTANCE_SOURCE, WARM_FACTOR } from './conductors.ts';

export const RUN_METRES: Range = { name: 'Length of run', unit: 'm', low: 0.1, high: 200 };
export const RUN_AMPS: Range = { name: 'Current', unit: 'A', low: 0.01, high: 16 };

/** Most volts that may be lost from the origin of a 230 V supply to anything but lighting: 5 %. */
export const DROP_LIMIT = 11.5;
export const DROP_LIMIT_SOURCE = 'BS 7671 Appendix 4, Table 4Ab: 5 % of 230 V, from origin to load';

/** Flex ratings, mm² → A (BS 7671 Table 4F3A; the 1.5 mm² row is quoted as 15 or 16, the lower stands here). */
export const FLEX_AMPS: ReadonlyMap<number, number> = new Map([
  [0.5, 3],
  [0.75, 6],
  [1, 10],
  [1.5, 15],
]);

/** BS 7671 Appendix 4, 70 °C thermoplastic copper: mm² → mV lost for each amp and metre, both ways and warm. */
const MILLIVOLTS: ReadonlyMap<number, number> = new Map([
  [1, 44],
  [1.5, 29],
  [2.5, 18],
]);

/** Cross-sections that the mV/A/m table holds, mm². */
export const TABLE_SECTIONS: readonly number[] = [...MILLIVOLTS.keys()];

/** A run of two-way wiring: mm² of each core, metres one way, amps. */
export interface Run {
  readonly mm2: number;
  readonly metres: number;
  readonly amps: number;
}

/**
 * Volts lost in a flex, out and back, from the resistance of its cores.
 * @param warm cores at 70 °C, fully loaded; otherwise at 20 °C
 * @throws RangeError for a length or current out of range, or a size that the table lacks
 */
export function flexDrop({ mm2, metres, amps }: Run, warm: boolean): Worked<number> {
  const each = milliohmsPerMetre('flex', mm2);
  const factor = warm ? WARM_FACTOR : 1;
  const ohms = (2 * within(RUN_METRES, metres) * each * factor) / 1000;
  const value = ohms * within(RUN_AMPS, amps);
  return {
    value,
    source: `${RESISTANCE_SOURCE}, class 5`,
    lines: [
      {
        what: 'Resistance out and back',
        rule: `2 × metres × mΩ per metre${warm ? ' × 1.2 for 70 °C' : ''} ÷ 1000`,
        put: `2 × ${metres} × ${each}${warm ? ` × ${WARM_FACTOR}` : ''} ÷ 1000`,
        result: `${figure(ohms, 3, true)} Ω`,
      },
      {
        what: 'Volt drop',
        rule: 'current × resistance',
        put: `${amps} × ${figure(ohms, 3, true)}`,
        result: `${figure(value, 2, true)} V`,
      },
    ],
  };
}

/**
 * Volts lost in fixed wiring by the mV/A/m table, cores at 70 °C.
 * @throws RangeError for a length or current out of range, or a size other than 1.0, 1.5 or 2.5 mm²
 */
export function tableDrop({ mm2, metres, amps }: Run): Worked<number> {
  const millivolts = MILLIVOLTS.get(mm2);
  if (millivolts === undefined) {
    throw new RangeError(`Cross-section: one of ${TABLE_SECTIONS.join(', ')} mm², not ${mm2}`);
  }
  const value = (millivolts * within(RUN_METRES, metres) * within(RUN_AMPS, amps)) / 1000;
  return {
    value,
    source: 'BS 7671 Appendix 4, 70 °C thermoplastic copper, as publicly quoted',
    lines: [
      {
        what: 'Volt drop',
        rule: 'mV per amp and metre × metres × amps ÷ 1000',
        put: `${millivolts} × ${metres} × ${amps} ÷ 1000`,
        result: `${figure(value, 2, true)} V`,
      },
    ],
  };
}

/** Whether a drop keeps to 5 % of 230 V. The supply side of the run spends part of the same allowance. */
export function dropAllowed(volts: number): Worked<boolean> {
  const passes = volts <= DROP_LIMIT;
  return {
    value: passes,
    source: DROP_LIMIT_SOURCE,
    lines: [
      {
        what: 'Limit',
        rule: '5 % of 230 V, whole way from the origin',
        put: `${figure(volts, 2, true)} V of ${DROP_LIMIT} V`,
        result: passes ? 'within the limit' : 'too much',
        passes,
      },
    ],
  };
}

/**
 * Whether a flex may carry a current.
 * @throws RangeError when no rating is known for the size
 */
export function flexCarries(mm2: number, amps: number): Worked<boolean> {
  const rating = FLEX_AMPS.get(mm2);
  if (rating === undefined) {
    throw new RangeError(
      `Cross-section of a flex: one of ${[...FLEX_AMPS.keys()].join(', ')} mm², not ${mm2}`,
    );
  }
  const passes = within(RUN_AMPS, amps) <= rating;
  return {
    value: passes,
    source: 'BS 7671 Table 4F3A, as publicly quoted',
    lines: [
      {
        what: 'Rating of the flex',
        rule: `${mm2} mm² carries ${rating} A`,
        put: `${amps} A of ${rating} A`,
        result: passes ? 'within its rating' : 'overloaded',
        passes,
      },
    ],
  };
}
