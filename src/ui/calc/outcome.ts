import type { Answer, Calculator } from './calculator.ts';
import { givenBy, problemsOf, type Texts } from './read.ts';

/** What a form shows: an answer, or why there is none yet. */
export type Outcome =
  | { readonly answer: Answer }
  /** `fields` holds a sentence for each field in trouble; `together` says which values do not go together. */
  | { readonly fields: Readonly<Record<string, string>>; readonly together?: string };

/** Works out what the texts give. */
export function outcomeOf(calculator: Calculator, texts: Texts): Outcome {
  const fields = problemsOf(calculator, texts);
  if (Object.keys(fields).length > 0) return { fields };
  try {
    return { answer: calculator.work(givenBy(calculator, texts)) };
  } catch (problem) {
    // The formulas say by a RangeError what they expect; anything else is a fault of ours.
    if (problem instanceof RangeError) return { fields: {}, together: `${problem.message}.` };
    throw problem;
  }
}
