import { BEEP_OHMS, type Instrument, lampAt } from '../../engine/diagnose/instrument.ts';

/** What a typed reading means: the reading in volts, ohms (Infinity for open) or whether it beeps, or what is wrong with the text. */
export type Typed = { readonly shown: number | boolean } | { readonly problem: string };

const OPEN = /^(open( circuit)?|o\.?l\.?|over|over ?load|inf(inite|inity)?|∞|no way through)$/;
const BEEPS = /^(beeps?|beeping|bleeps?|sounds?|yes|closed|joined|short(ed)?)$/;
const SILENT = /^(silent|silence|no beep|no|not joined|nothing|dead)$/;
const NOTHING = /^(nothing|no lamps?|none|dead|no|nil|off)$/;
/** A number, a letter for thousands or millions, and a unit: `230 V`, `about 2.4 kΩ`, `0,4 ohm`. */
const NUMBER =
  /^(?:about |approx\.? |~|ca\.? )?(\d+(?:[.,]\d+)?)\s*([km]?)\s*(v|volts?|ω|ohms?|r)?( ?a\.?c\.?)?$/;

/** More volts than this is not a heating control: a reading typed wrong, or a fault that no control makes. */
const MOST_VOLTS = 500;

/**
 * Reads what somebody typed for an instrument: `230 V`, `dead`, `beep`, `open`, `0.4 ohm`, `2.4 kΩ`. What cannot be read
 * comes back as a problem: a sentence that says what would be understood.
 */
export function readTyped(instrument: Instrument, text: string): Typed {
  const said = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (said === '') return { problem: `Type what the meter shows: ${EXAMPLES[instrument]}.` };
  return instrument === 'tester' || instrument === 'volts'
    ? volts(instrument, said, text)
    : ohms(instrument, said, text);
}

const EXAMPLES: Readonly<Record<Instrument, string>> = {
  tester: '“230 V”, “50 V” or “dead”',
  volts: '“230 V”, “57 V” or “0”',
  continuity: '“beep”, “silent” or “0.4 ohm”',
  ohms: '“0.4 ohm”, “2.4 kΩ” or “open”',
};

const notRead = (instrument: Instrument, text: string): Typed => ({
  problem: `“${text.trim()}” cannot be read here. Type ${EXAMPLES[instrument]}.`,
});

/** A number with its unit, or undefined. `kind` is the unit that was written, if any. */
function numberIn(said: string): { value: number; kind: 'volts' | 'ohms' | undefined } | undefined {
  const found = NUMBER.exec(said.replace(/[Ωω]/g, 'ω'));
  if (!found) return undefined;
  const [, digits = '', times = '', unit = ''] = found;
  const factor = times === 'k' ? 1e3 : times === 'm' ? 1e6 : 1;
  const kind = unit === '' ? undefined : unit.startsWith('v') ? 'volts' : 'ohms';
  return { value: Number(digits.replace(',', '.')) * factor, kind };
}

function volts(instrument: 'tester' | 'volts', said: string, text: string): Typed {
  if (NOTHING.test(said)) return { shown: 0 };
  const number = numberIn(said);
  if (!number) return notRead(instrument, text);
  if (number.kind === 'ohms')
    return { problem: `“${text.trim()}” is in ohms. Type volts: ${EXAMPLES[instrument]}.` };
  if (number.value > MOST_VOLTS) {
    return { problem: `“${text.trim()}” is more than ${MOST_VOLTS} V. Check the meter, then type it again.` };
  }
  return { shown: instrument === 'tester' ? lampAt(number.value) : Math.round(number.value) };
}

function ohms(instrument: 'continuity' | 'ohms', said: string, text: string): Typed {
  const isBeep = instrument === 'continuity';
  if (OPEN.test(said)) return { shown: isBeep ? false : Number.POSITIVE_INFINITY };
  if (isBeep && BEEPS.test(said)) return { shown: true };
  if (isBeep && SILENT.test(said)) return { shown: false };
  if (!isBeep && /^(short(ed)?|closed|joined)$/.test(said)) return { shown: 0 };
  const number = numberIn(said);
  if (!number) return notRead(instrument, text);
  if (number.kind === 'volts') {
    return { problem: `“${text.trim()}” is in volts. With volts on the circuit stop: it is not dead.` };
  }
  return { shown: isBeep ? number.value < BEEP_OHMS : number.value };
}
