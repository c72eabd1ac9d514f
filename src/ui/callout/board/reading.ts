import { breachSays } from '../../../engine/diagnose/breach.ts';
import type { Instrument, Shown } from '../../../engine/diagnose/instrument.ts';

/** What stands on an instrument, and the same in words. */
export interface Display {
  /** For the figures of the multimeter. */
  readonly figures: string;
  readonly unit: string;
  /** The highest lamp of the tester that lights, volts. */
  readonly lamp: number;
  readonly beeps: boolean;
  readonly refused: boolean;
  readonly says: string;
}

export const instruments: readonly Instrument[] = ['tester', 'volts', 'continuity', 'ohms'];

export const instrumentName: Readonly<Record<Instrument, string>> = {
  tester: 'Two-pole tester',
  volts: 'Volts',
  continuity: 'Continuity',
  ohms: 'Ohms',
};

const UNITS: Readonly<Record<Instrument, string>> = { tester: 'V', volts: 'V', continuity: '', ohms: 'Ω' };

const NOTHING = { figures: '', unit: '', lamp: 0, beeps: false, refused: false };

/** How an instrument shows a reading; `undefined` for one that touches nothing yet. */
export function displayOf(instrument: Instrument, shown: Shown | undefined): Display {
  const unit = UNITS[instrument];
  if (shown === undefined) {
    const figures = instrument === 'continuity' || instrument === 'ohms' ? '0L' : '----';
    return { ...NOTHING, unit, figures, says: 'Put both probes on terminals.' };
  }
  if (shown === 'refused') {
    return { ...NOTHING, unit, figures: 'Err', refused: true, says: breachSays['continuity-live'] };
  }
  if (typeof shown === 'boolean') {
    return { ...NOTHING, unit, figures: shown ? '0' : '0L', beeps: shown, says: sayBeep(shown) };
  }
  if (instrument === 'tester') return { ...NOTHING, unit, lamp: shown, says: sayLamp(shown) };
  if (instrument === 'volts') return { ...NOTHING, unit, figures: `${shown}`, says: `${shown} volts` };
  return { ...NOTHING, ...ohms(shown) };
}

const sayBeep = (beeps: boolean): string => (beeps ? 'It beeps: joined' : 'No beep: not joined');

const sayLamp = (lamp: number): string => (lamp === 0 ? 'No lamp lights' : `Lamps light up to ${lamp} volts`);

/** Ohms as a meter shows them, in the unit that leaves three figures or four. */
function ohms(value: number): Pick<Display, 'figures' | 'unit' | 'says'> {
  if (value >= 10e6)
    return { figures: '0L', unit: 'MΩ', says: 'Open: no way through, or too many ohms to show' };
  if (value < 1000) return { figures: `${value}`, unit: 'Ω', says: `${value} ohms` };
  const mega = value >= 1e6;
  const shown = value / (mega ? 1e6 : 1e3);
  const figures = shown.toFixed(shown < 10 ? 2 : shown < 100 ? 1 : 0);
  return { figures, unit: mega ? 'MΩ' : 'kΩ', says: `${figures} ${mega ? 'megohms' : 'kilohms'}` };
}

/** Volts between nothing and mains may be picked up by a core that is joined to nothing. Limits: half a lamp of 12 V, and the lowest mains (BS EN 60038, 216 V). */
export const mayBeGhost = (instrument: Instrument, shown: Shown | undefined): boolean =>
  instrument === 'volts' && typeof shown === 'number' && shown > 5 && shown < 216;
