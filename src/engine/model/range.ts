/** A quantity that a formula takes, and the values between which the formula holds. */
export interface Range {
  /** Such as `Run of pipe`. */
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** Whether only whole numbers count, such as elbows. */
  readonly whole?: boolean;
}

/** What the range takes, in words: `a number from 0 to 50 m`. */
export function expects({ unit, low, high, whole }: Range): string {
  const span = `${low} to ${high}${unit === '' ? '' : ` ${unit}`}`;
  return `a ${whole ? 'whole ' : ''}number from ${span}`;
}

/** Whether the value lies in the range, both ends included. */
export function fitsIn({ low, high, whole }: Range, value: number): boolean {
  return value >= low && value <= high && (!whole || Number.isInteger(value));
}

/**
 * Hands the value back when it lies in the range.
 * @throws RangeError naming the quantity, the range and the value
 */
export function within(range: Range, value: number): number {
  if (!fitsIn(range, value)) throw new RangeError(`${range.name}: ${expects(range)}, not ${value}`);
  return value;
}
