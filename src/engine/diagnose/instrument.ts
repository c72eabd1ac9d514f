import { type Memo, ohmsAcross, voltsAcross } from './cluster.ts';
import { energised, type Setup } from './setup.ts';
import type { Stand } from './world.ts';

/** A two-pole tester, and the three ranges of a multimeter that a visit needs. */
export type Instrument = 'tester' | 'volts' | 'continuity' | 'ohms';

/** Input resistance of a two-pole tester, ohms: low, so that a core that only picks up volts reads dead (common practice, about 200 kΩ). */
export const TESTER_OHMS = 200e3;
/** Input resistance of a multimeter on volts, ohms (common practice). */
export const MULTIMETER_OHMS = 10e6;
/** A multimeter beeps below this many ohms (common practice, 30 to 50 Ω). */
export const BEEP_OHMS = 50;
/** The lamps of a two-pole tester, volts (common practice). */
export const TESTER_LAMPS = [12, 24, 50, 120, 230] as const;
/** A lamp lights from this share of its volts on (assumption). */
const LAMP_SHARE = 0.85;

/**
 * What an instrument shows: volts (a multimeter in whole volts, a tester by its highest lamp, 0 for none), ohms (whole,
 * Infinity for open), or whether it beeps. `refused`: ohms or continuity on a circuit with volts in it, which also is a breach.
 */
export type Shown = number | boolean | 'refused';

/** Whether an instrument is meant for a dead circuit only. */
export const needsDead = (instrument: Instrument): boolean =>
  instrument === 'continuity' || instrument === 'ohms';

/**
 * An instrument between two nodes, named `part/terminal` or `part/(node)`: says what it shows wherever the system stands.
 * Each reading is the nodal solution of the circuit as it stands, with the instrument's own resistance in it. Throws an
 * Error for an unknown name. `memo` is for many readings under one setup.
 */
export function probe(
  setup: Setup,
  instrument: Instrument,
  [a, b]: readonly [string, string],
  memo?: Memo,
): (stand: Stand) => Shown {
  const node = (name: string): number => {
    const found = setup.system.nodeOf.get(name);
    if (found === undefined) throw new Error(`no terminal "${name}"`);
    return found;
  };
  const [from, to] = [node(a), node(b)];
  if (instrument === 'volts') {
    return (stand) => Math.round(voltsAcross(stand, from, to, MULTIMETER_OHMS, memo));
  }
  if (instrument === 'tester') return (stand) => lampAt(voltsAcross(stand, from, to, TESTER_OHMS, memo));
  if (energised(setup)) return () => 'refused';
  if (instrument === 'ohms') return (stand) => Math.round(ohmsAcross(stand, from, to, memo));
  return (stand) => ohmsAcross(stand, from, to, memo) < BEEP_OHMS;
}

/** What an instrument shows between two nodes where the system stands so: see `probe`. */
export const read = (
  setup: Setup,
  stand: Stand,
  instrument: Instrument,
  between: readonly [string, string],
): Shown => probe(setup, instrument, between)(stand);

/** The highest lamp of a two-pole tester that lights at these volts, or 0. */
export const lampAt = (volts: number): number =>
  TESTER_LAMPS.findLast((lamp) => volts >= LAMP_SHARE * lamp) ?? 0;

/** Volts that still count as the same reading: mains differs from house to house and hour to hour (BS EN 60038: 216 to 253 V). */
const SAME_VOLTS = 5;
const SAME_SHARE = 0.1;

/** Whether two readings of one instrument are the same reading, within what supply and meter leave open. */
export function sameReading(instrument: Instrument, x: Shown, y: Shown): boolean {
  if (typeof x !== 'number' || typeof y !== 'number' || instrument === 'tester') return x === y;
  if (x === y) return true;
  const slack = instrument === 'volts' ? SAME_VOLTS : 1;
  return Math.abs(x - y) <= slack + SAME_SHARE * Math.min(Math.abs(x), Math.abs(y));
}
