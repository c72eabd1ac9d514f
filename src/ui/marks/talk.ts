import type { Coursework } from '../../course/coursework/coursework.ts';
import type { Result } from '../../course/coursework/work.ts';
import type { ResultHead } from '../../course/marks/class.ts';
import type { Slip } from '../../course/marks/own-numbers.ts';
import type { Piece } from '../../course/marks/piece.ts';
import type { Unpacked } from '../../files/zip.ts';

/** What the page and its workers say to each other. A worker keeps the results that it has read, by their file's name. */

/** A file as it was chosen or dropped, with the folders that it lies in. */
export interface Given {
  readonly name: string;
  readonly blob: Blob;
}

/** A piece of work by where it stands. */
export interface Where {
  readonly file: string;
  readonly index: number;
}

export type Question =
  /** Opens files: a result is read and kept, a zip is unpacked and its files given back. */
  | { readonly ask: 'open'; readonly files: readonly Given[] }
  | { readonly ask: 'read'; readonly files: readonly Unpacked[] }
  | { readonly ask: 'grade'; readonly coursework: Coursework; readonly files: readonly string[] }
  | { readonly ask: 'whose'; readonly pieces: readonly Where[]; readonly codes: readonly string[] }
  | { readonly ask: 'slips'; readonly circuits: readonly (Where & { readonly circuit: string })[] }
  | { readonly ask: 'result'; readonly file: string };

/** What was read, what is still to be read, and what was left out, in words. */
export interface Opened {
  readonly heads: readonly ResultHead[];
  readonly unpacked: readonly Unpacked[];
  readonly troubles: readonly string[];
}

export interface Answers {
  readonly open: Opened;
  readonly read: Opened;
  readonly grade: readonly { readonly file: string; readonly pieces: readonly Piece[] }[];
  readonly whose: readonly (string | undefined)[];
  readonly slips: readonly (readonly [circuit: string, slips: readonly Slip[]])[];
  readonly result: Result | undefined;
}

export type Ask = Question['ask'];
export type QuestionOf<A extends Ask> = Extract<Question, { ask: A }>;

/** A worker's answer to the question of the same number, or why there is none. */
export type Reply =
  | { readonly number: number; readonly answer: Answers[Ask] }
  | { readonly number: number; readonly failed: string };
