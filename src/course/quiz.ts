/** An answer that an author offers, right or wrong. A wrong one says what comes of it. */
export interface AuthoredOption {
  readonly id: string;
  readonly says: string;
  readonly right?: true;
  /** Wrong options give all three: why it is wrong, what would come of it, where to look. */
  readonly cause?: string;
  readonly consequence?: string;
  readonly look?: string;
}

/** A question with options. Of the wrong ones some are left out, by the seed. */
export interface AuthoredChoice {
  readonly id: string;
  readonly ask: string;
  /** Every right option must be chosen. */
  readonly many?: true;
  readonly options: readonly AuthoredOption[];
  readonly hints: readonly [string, string, string];
  /** The solution, a sentence each. */
  readonly steps: readonly string[];
}

/** A step of a procedure, and what must come before it. */
export interface AuthoredStep {
  readonly id: string;
  readonly says: string;
  /** Steps that must be done before this one, and why: what comes of doing them the other way round. */
  readonly after?: readonly {
    readonly step: string;
    readonly cause: string;
    readonly consequence: string;
    readonly look: string;
  }[];
}

/** A quiz file: questions with options, or one procedure to put in order. */
export interface Quiz {
  readonly id: string;
  readonly title: string;
  /** Where it comes from, with the edition; or `common practice`. */
  readonly source: string;
  readonly choices?: readonly AuthoredChoice[];
  readonly procedure?: {
    readonly ask: string;
    readonly steps: readonly AuthoredStep[];
    readonly hints: readonly [string, string, string];
  };
}
