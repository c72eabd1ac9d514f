import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked } from '../model/worked.ts';
import { type Conductor, milliohmsPerMetre, RESISTANCE_SOURCE } from './conductors.ts';
import { RUN_METRES } from './volt-drop.ts';

export const EXTERNAL_OHMS: Range = { name: 'Loop impedance at the spur', unit: 'Ω', low: 0, high: 200 };

/** A run of line and protective conductor side by side. */
export interface LoopRun {
  readonly kind: Conductor;
  /** mm² of the line and of the protective conductor. */
  readonly line: number;
  readonly earth: number;
  readonly metres: number;
}

/** BS 1362 fuse, A. */
export type PlugFuse = 3 | 13;

/** Current, A, that opens a BS 1362 fuse within 0.4 s; the factor for the lowest supply voltage is from memory. */
const OPENS_AT: Readonly<Record<PlugFuse, number>> = { 3: 14, 13: 95 };
const U0 = 230;
const C_MIN = 0.95;
/** Rule of thumb for a reading taken cold: cores warm up by a fault, so keep to this share of the limit. */
const COLD_SHARE = 0.8;

/**
 * R1 + R2 at 20 °C: the line out and the protective conductor back, Ω.
 * @throws RangeError for a length out of range or a size that the table lacks
 */
export function loopResistance({ kind, line, earth, metres }: LoopRun): Worked<number> {
  const [r1, r2] = [milliohmsPerMetre(kind, line), milliohmsPerMetre(kind, earth)];
  const value = ((r1 + r2) * within(RUN_METRES, metres)) / 1000;
  return {
    value,
    source: RESISTANCE_SOURCE,
    lines: [
      {
        what: 'R1 + R2',
        rule: '(mΩ per metre of line + of earth) × metres ÷ 1000',
        put: `(${r1} + ${r2}) × ${metres} ÷ 1000`,
        result: `${figure(value, 3, true)} Ω`,
      },
    ],
  };
}

/** Highest earth fault loop impedance, Ω, at which a BS 1362 fuse opens within 0.4 s at 230 V. */
export function highestLoop(fuse: PlugFuse): Worked<number> {
  const value = (U0 * C_MIN) / OPENS_AT[fuse];
  return {
    value,
    source:
      'BS 7671 Table 41.2(d) of 2008 (16.4 and 2.42 Ω) × 0.95, the factor of later editions (from memory)',
    lines: [
      {
        what: `Highest loop impedance, ${fuse} A fuse`,
        rule: '230 V × 0.95 ÷ current that opens it in 0.4 s',
        put: `${U0} × ${C_MIN} ÷ ${OPENS_AT[fuse]}`,
        result: `${figure(value, value < 10 ? 2 : 1, true)} Ω`,
      },
    ],
  };
}

/** Loop impedance at the end of a run, Ω, the limit, and how it came out against both. */
export interface Loop {
  readonly r1r2: number;
  readonly zs: number;
  readonly limit: number;
  readonly passes: boolean;
  /** Whether a cold reading keeps to 80 % of the limit: a rule of thumb. */
  readonly passesCold: boolean;
}

/**
 * Earth fault loop impedance at the end of a run behind a BS 1362 fuse.
 * @param external loop impedance where the run begins, 0 to 200 Ω
 * @throws RangeError for a value out of range
 */
export function faultLoop(run: LoopRun, external: number, fuse: PlugFuse): Worked<Loop> {
  const pair = loopResistance(run);
  const highest = highestLoop(fuse);
  const zs = within(EXTERNAL_OHMS, external) + pair.value;
  const limit = highest.value;
  const [passes, passesCold] = [zs <= limit, zs <= COLD_SHARE * limit];
  const ohms = (value: number) => figure(value, 2, true);
  return {
    value: { r1r2: pair.value, zs, limit, passes, passesCold },
    source: `${pair.source}. ${highest.source}`,
    lines: [
      ...pair.lines,
      {
        what: 'Zs at the far end',
        rule: 'loop impedance at the spur + R1 + R2',
        put: `${figure(external)} + ${figure(pair.value, 3)}`,
        result: `${ohms(zs)} Ω`,
      },
      ...highest.lines,
      {
        what: 'Against the limit',
        rule: 'Zs at most the limit',
        put: `${ohms(zs)} Ω of ${ohms(limit)} Ω`,
        result: passes ? 'the fuse opens in time' : 'too high',
        passes,
      },
      {
        what: 'Against 80 % of it',
        rule: 'rule of thumb for a reading taken cold',
        put: `${ohms(zs)} Ω of ${COLD_SHARE} × ${ohms(limit)} = ${ohms(COLD_SHARE * limit)} Ω`,
        result: passesCold ? 'within it' : 'above it',
        passes: passesCold,
      },
    ],
  };
}
