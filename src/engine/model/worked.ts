/** One line of a calculation, as a page shows it. The texts carry their units. */
export interface WorkLine {
  /** What is found: `Equivalent length in 22 mm`. */
  readonly what: string;
  /** The formula in words and signs: `run + elbows × allowance`. */
  readonly rule: string;
  /** The same with the numbers put in: `7 + 4 × 0.8`. */
  readonly put: string;
  /** What comes out, with its unit: `10.2 m`. */
  readonly result: string;
  /** True for a line that is looked up rather than reckoned. */
  readonly lookedUp?: boolean;
  /** For a line that is a test: whether it is passed. */
  readonly passes?: boolean;
}

/** An answer together with the way to it, so that a page shows the working and nothing is typed twice. */
export interface Worked<T> {
  readonly value: T;
  readonly lines: readonly WorkLine[];
  /** Where the formula or the table comes from, with its edition. */
  readonly source: string;
}
