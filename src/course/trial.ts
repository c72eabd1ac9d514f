/** Where an answer was given. */
export type Mode = 'lesson' | 'practice' | 'revision' | 'test-out' | 'before' | 'after' | 'callout';

/**
 * One answer, as it is kept: the log of trials is the truth, and everything else (mastery, revision, calibration) is
 * worked out from it.
 */
export interface Trial {
  /** Milliseconds since 1970, by the device's clock. */
  readonly at: number;
  readonly objective: string;
  /** Address of the variant. */
  readonly item: string;
  readonly method: string;
  readonly right: boolean;
  /** 1 for the first answer to this variant; a later one is practice, not evidence. */
  readonly attempt: number;
  /** How many hints were open: 0 to 3. */
  readonly hints: number;
  /** Steps of the solution that were shown before the answer. */
  readonly shown: number;
  /** Milliseconds from seeing the question to answering. */
  readonly took: number;
  readonly mode: Mode;
}

/** An answer to a fresh variant, without help: what mastery is measured by. */
export const isEvidence = ({ attempt }: Trial): boolean => attempt === 1;
export const isUnaided = ({ hints, shown }: Trial): boolean => hints === 0 && shown === 0;
