import type { Core } from '../engine/model/part.ts';
import type { Config, Settings } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';

/** A circuit to look at beside a question: a wiring of a layout, as it stands. */
export interface Scene {
  /** Id of the layout. */
  readonly layout: string;
  readonly wires: readonly Wire[];
  readonly config: Config;
  /** Terminals to point at. */
  readonly lit?: readonly string[];
  /** The question asks for what is live, so the picture must not show it before the answer. */
  readonly dark?: true;
}

/** Something to choose, mark, place or put in order. */
export interface Choice {
  readonly id: string;
  readonly says: string;
}

/** A lead to land: a terminal of a part, with the colour of its core. */
export interface Lead extends Choice {
  readonly core: Core;
}

/** A switch or thermostat that the learner sets. */
export interface Control {
  readonly id: string;
  readonly label: string;
  readonly settings: readonly [rest: string, active: string];
}

/**
 * How a question is answered. All but `choice` make the learner produce the answer.
 * - `choice`: one of the options, or with `many` every one that holds.
 * - `mark`: terminals to mark, any number; with `one` the single point asked for.
 * - `place`: each lead goes to one of the ways.
 * - `set`: switches and thermostats, from `start`.
 * - `order`: all steps, in an order that is safe and sound.
 * - `number`: a value with its unit, typed.
 */
export type Form =
  | { readonly kind: 'choice'; readonly options: readonly Choice[]; readonly many: boolean }
  | { readonly kind: 'mark'; readonly among: readonly Choice[]; readonly one: boolean }
  | { readonly kind: 'place'; readonly leads: readonly Lead[]; readonly ways: readonly Choice[] }
  | { readonly kind: 'set'; readonly controls: readonly Control[]; readonly start: Settings }
  | { readonly kind: 'order'; readonly steps: readonly Choice[] }
  | { readonly kind: 'number'; readonly unit: string; readonly accepts: readonly string[] };

/** An answer, of the kind of its form. */
export type Answer =
  | { readonly kind: 'choice'; readonly chosen: readonly string[] }
  | { readonly kind: 'mark'; readonly marked: readonly string[] }
  | { readonly kind: 'place'; readonly landed: Readonly<Record<string, string>> }
  | { readonly kind: 'set'; readonly settings: Settings }
  | { readonly kind: 'order'; readonly steps: readonly string[] }
  /** As typed: "28 mm", "0.5 V". */
  | { readonly kind: 'number'; readonly typed: string };

/** What is wrong with one thing in an answer. Nothing here is said of every answer alike. */
export interface Note {
  /** Id of the option, terminal, lead, control or step that it is about; the empty string for the answer as a whole. */
  readonly about: string;
  /** Why it is so: what the circuit, the procedure or the sum does. */
  readonly cause: string;
  /** What would come of it on a real job. */
  readonly consequence: string;
  /** Where to look to see it. */
  readonly look: string;
  /** The state that shows it, where a circuit does. */
  readonly scene?: Scene;
}

export interface Judgement {
  readonly right: boolean;
  /** At least one when wrong; the gravest first. */
  readonly notes: readonly Note[];
}

/** Help before an answer, in three levels: where to look, which rule, the step itself. */
export type Hints = readonly [look: string, rule: string, step: string];

/** One variant of a question, ready to be asked. */
export interface Item {
  /** Address of the variant: the task and its seed. The same address always gives the same question. */
  readonly id: string;
  /** What it takes to solve it; a mixed set never puts two of one method side by side. */
  readonly method: string;
  readonly ask: string;
  readonly scene?: Scene;
  readonly form: Form;
  readonly hints: Hints;
  /** The solution worked step by step, a sentence each, the last one giving the answer: help fades from the end. */
  readonly steps: readonly string[];
  /** A right answer; there may be others. */
  readonly answer: Answer;
  /** Judges an answer of the form's kind. Ids that the form does not offer count as wrong, never as an error. */
  readonly judge: (answer: Answer) => Judgement;
}

/** Whether the learner must produce the answer rather than pick it. */
export const produces = ({ form }: Pick<Item, 'form'>): boolean => form.kind !== 'choice';
