/** Whether a value may stand in an element: undefined when it may, else what was expected there, in words. */
export type Check = (value: string) => string | undefined;

/** Text of at most so many characters. */
export const upTo =
  (most: number): Check =>
  (value) =>
    value.length <= most ? undefined : `at most ${most} characters, found ${value.length}`;

/** One of these words. */
export const oneOf =
  (...words: readonly string[]): Check =>
  (value) =>
    words.includes(value) ? undefined : `one of ${words.map((word) => `"${word}"`).join(', ')}`;

export const matching =
  (pattern: RegExp, expected: string): Check =>
  (value) =>
    pattern.test(value) ? undefined : expected;

/** A number within bounds, with so many digits after the point at most. */
export const decimal =
  (least: number, most: number, digits: number): Check =>
  (value) => {
    const fits = new RegExp(`^-?\\d{1,10}(\\.\\d{1,${digits}})?$`).test(value);
    return fits && Number(value) >= least && Number(value) <= most
      ? undefined
      : `a number from ${least} to ${most} with at most ${digits} digits after the point`;
  };

/** What both say: the first that objects. */
export const both =
  (...checks: readonly Check[]): Check =>
  (value) => {
    for (const check of checks) {
      const expected = check(value);
      if (expected !== undefined) return expected;
    }
    return undefined;
  };
