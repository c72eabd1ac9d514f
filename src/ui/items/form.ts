import type { Snippet } from 'svelte';
import type { Answer, Form } from '../../course/item.ts';

type Kind = Form['kind'];

/** What every form is given, whatever its kind. */
export interface FormProps<K extends Kind> {
  readonly form: Extract<Form, { kind: K }>;
  readonly answer: Extract<Answer, { kind: K }>;
  /** A name that no other form on the page has. */
  readonly name: string;
  /** Ids of what was judged wrong, and what to say there. */
  readonly wrong: ReadonlySet<string>;
  readonly note: Snippet<[id: string]>;
  /** Nothing can be changed: the answer is right, or given for good. */
  readonly locked: boolean;
  readonly onchange: (answer: Answer) => void;
}
