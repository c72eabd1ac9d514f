import type { Range } from '../../engine/model/range.ts';
import type { WorkLine } from '../../engine/model/worked.ts';

/** A number to be typed in. Its name, unit and limits are those of the formula. */
export interface NumberField {
  readonly kind: 'number';
  readonly id: string;
  readonly range: Range;
  readonly start: number;
  /** Where to find the number, in a few words. */
  readonly hint?: string;
}

/** One of a few things to be picked. */
export interface ChoiceField {
  readonly kind: 'choice';
  readonly id: string;
  readonly label: string;
  /** What the address holds, then what the reader sees. */
  readonly options: readonly (readonly [value: string, shown: string])[];
  readonly start: string;
}

export type Field = NumberField | ChoiceField;

/** What was given, read and in range. An unknown name throws an Error. */
export interface Given {
  readonly number: (id: string) => number;
  readonly choice: (id: string) => string;
}

/** The answer in a sentence, whether all tests are passed (left out where nothing is tested), and the way to it. */
export interface Answer {
  readonly says: string;
  readonly passes?: boolean;
  readonly lines: readonly WorkLine[];
  readonly sources: readonly string[];
}

/** One calculator. Its page, its entry in the search and its form are all made from this. */
export interface Calculator {
  /** Its place in the address: lower case and hyphens. */
  readonly id: string;
  readonly title: string;
  /** What it answers, in a sentence. */
  readonly summary: string;
  /** Other words that people search for. */
  readonly also: string;
  readonly fields: readonly Field[];
  /** Known cases to try, as what the fields are given. Fields left out keep their start. */
  readonly examples: readonly { readonly name: string; readonly given: Readonly<Record<string, string>> }[];
  /** What else must hold beside the number, and what says so. */
  readonly rules?: readonly { readonly says: string; readonly paragraph: string }[];
  readonly rulesSource?: string;
  readonly cautions: readonly string[];
  /** @throws RangeError where values that are each in range do not go together */
  readonly work: (given: Given) => Answer;
}
