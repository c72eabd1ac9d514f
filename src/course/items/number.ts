import { figure } from '../../engine/model/figure.ts';
import type { Judgement, Note } from '../item.ts';
import type { Words } from './pick.ts';

/** What a typed value was read as. */
export type Reading =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'no-number' }
  | { readonly kind: 'no-unit'; readonly value: number }
  | { readonly kind: 'other-unit'; readonly value: number; readonly unit: string };

const TYPED =
  /^\s*([+−-]?(?:[1-9]\d{0,2}(?:[ ,]\d{3})+(?:\.\d+)?|\d+(?:[.,]\d+)?|[.,]\d+))(?![\d,]|\.\d)\s*(.*?)\s*$/u;
/** Three figures after a comma or a space are thousands, as Britain writes them, unless all before them is nought. */
const THOUSANDS = /^[+-]?[1-9]\d{0,2}(?:[ ,]\d{3})+(?:\.\d+)?$/;
/** Points and capitals do not matter: “V a.c.” is “v ac”. */
const plain = (unit: string): string => unit.toLowerCase().replaceAll('.', '').replace(/\s+/g, ' ');

function numberIn(figures: string): number {
  const signed = figures.replace('−', '-');
  return Number(THOUSANDS.test(signed) ? signed.replace(/[ ,]/g, '') : signed.replace(',', '.'));
}

/**
 * Reads a typed value with its unit: "28 mm", "0,5V", "1,200 W". A comma is a decimal point, or marks thousands.
 * @param accepts names of the unit; capitals do not matter
 */
export function readQuantity(typed: string, accepts: readonly string[]): Reading {
  const match = TYPED.exec(typed);
  if (!match) return { kind: 'no-number' };
  const value = numberIn(match[1] ?? '');
  const unit = (match[2] ?? '').replace(/\s*\.$/, '');
  if (unit === '') return accepts.includes('') ? { kind: 'value', value } : { kind: 'no-unit', value };
  return accepts.some((name) => plain(name) === plain(unit))
    ? { kind: 'value', value }
    : { kind: 'other-unit', value, unit };
}

/** Share of a value by which figures differ only because binary cannot hold tenths: 10.9 − 10.7 is not quite 0.2. */
const ROUNDING = 1e-9;

/** A value that a known slip leads to. */
export interface Slip extends Words {
  readonly value: number;
}

/** What a typed number is judged by. */
export interface NumberTask {
  readonly unit: string;
  /** Names of the unit that count, the unit itself among them. */
  readonly accepts: readonly string[];
  readonly value: number;
  /** How far off still counts as right, in the unit. */
  readonly tolerance: number;
  readonly slips: readonly Slip[];
  /** What to say of any other value. */
  readonly wrong: (given: number) => Words;
}

const whole = (words: Words): Judgement => ({
  right: false,
  notes: [{ about: '', ...words } satisfies Note],
});

/** Judges a typed number: its unit must be there, and a slip that leads to it is told as such. */
export function judgeNumber(typed: string, task: NumberTask): Judgement {
  const { unit, accepts, value, tolerance, slips, wrong } = task;
  const reading = readQuantity(typed, accepts);
  const shown = typed.trim().slice(0, 40);
  if (reading.kind === 'no-number')
    return whole({
      cause: `“${shown}” is not a number with a unit.`,
      consequence: `Nobody can act on “${shown}”: a reading is a number of ${unit}.`,
      look: `Type the number first, then the unit, such as “1 ${unit}”.`,
    });
  if (reading.kind !== 'value') {
    const said = reading.kind === 'no-unit' ? 'has no unit' : `is in “${reading.unit}”, and ${unit} is asked`;
    return whole({
      cause: `Your ${figure(reading.value, 3)} ${said}.`,
      consequence: `${figure(reading.value, 3)} could be thousandths or thousands of what is meant. On a record sheet that is how wrong parts get ordered.`,
      look: `Say ${figure(reading.value, 3)} of what: give it in ${unit}.`,
    });
  }
  if (Math.abs(reading.value - value) <= tolerance + ROUNDING * Math.abs(value))
    return { right: true, notes: [] };
  const near = (slip: Slip) =>
    Math.abs(reading.value - slip.value) <= Math.max(tolerance, Math.abs(slip.value) * 0.005);
  const slip = slips.find((one) => near(one) && Math.abs(one.value - value) > tolerance);
  if (!slip) return whole(wrong(reading.value));
  return whole({
    cause: slip.cause,
    consequence: slip.consequence,
    look: slip.look,
    ...(slip.scene ? { scene: slip.scene } : {}),
  });
}
