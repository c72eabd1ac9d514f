import type { Marked } from '../coursework/grade.ts';
import type { Work } from '../coursework/work.ts';
import type { Slip } from './own-numbers.ts';

/** What a wiring of a job is compared by. The prints are hashes: see `fingerprint.ts`. */
export interface WiringFacts {
  /** Of the wires, end for end. */
  readonly wiring: string;
  /** Of the job and the circuit, whatever the numbers of the strip. */
  readonly circuit: string;
  /** Of the wires in the layout's own numbers: the same wires mean something else on a strip numbered otherwise. */
  readonly home: string;
  /** Wires that are not as in the go before it, or as given. */
  readonly moved: number;
  /** The share of the wires given that are still in place, 0 to 1: low where it was wired on another strip. */
  readonly kept: number;
}

/** What is wrong with a wrong circuit: by `circuit` of the wiring, as far as it has been worked out. */
export type SlipsByCircuit = ReadonlyMap<string, readonly Slip[]>;

/** A piece of work that has been graded again, without the bulk of it. */
export interface Piece extends Pick<Work, 'slot' | 'attempt' | 'at' | 'took' | 'hints' | 'kind'> {
  readonly file: string;
  /** Its place in the result. */
  readonly index: number;
  /** What the file says the learner was told. */
  readonly told: boolean;
  readonly marked: Marked;
  /** Of all that was done. */
  readonly print: string;
  /** Address of the question or callout, or id of the job. */
  readonly about: string;
  /** How many things were done at least: options chosen, wires moved, acts. */
  readonly deeds: number;
  readonly wiring?: WiringFacts;
  /** The learner of the class whose variant it was made for, where that is known. */
  readonly whose?: string;
}

/** A piece among all of its learner's. */
export interface Turn extends Piece {
  /** 1 for the first go at the slot, over all files of the learner. */
  readonly turn: number;
  /** Whether it is within the rules of its slot. */
  readonly counts: boolean;
}
