import { expects, fitsIn } from '../../engine/model/range.ts';
import type { Calculator, Field, Given } from './calculator.ts';

/** What stands in the fields, by their names. */
export type Texts = Readonly<Record<string, string>>;

/** What each field holds at first. */
export function startTexts({ fields }: Calculator): Record<string, string> {
  return Object.fromEntries(fields.map(({ id, start }) => [id, String(start)]));
}

/** What is wrong with a field's text, as a sentence that says what is expected; undefined when nothing is. */
export function problemWith(field: Field, text: string): string | undefined {
  const seen = text.trim() === '' ? 'nothing' : `“${text.trim()}”`;
  if (field.kind === 'choice') {
    const names = field.options.map(([value]) => value);
    return names.includes(text) ? undefined : `Pick one of ${names.join(', ')}, not ${seen}.`;
  }
  // Plain figures only: other notations that a program reads are typing errors here.
  const value = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text.trim()) ? Number(text) : Number.NaN;
  return fitsIn(field.range, value) ? undefined : `Give ${expects(field.range)}, not ${seen}.`;
}

/** Fields in trouble, by their names, each with a sentence. Empty when all can be read. */
export function problemsOf(calculator: Calculator, texts: Texts): Readonly<Record<string, string>> {
  const found = calculator.fields.flatMap((field) => {
    const problem = problemWith(field, texts[field.id] ?? '');
    return problem === undefined ? [] : [[field.id, problem] as const];
  });
  return Object.fromEntries(found);
}

/** The values of texts without problems. */
export function givenBy(calculator: Calculator, texts: Texts): Given {
  const textOf = (id: string, kind: Field['kind']): string => {
    const field = calculator.fields.find((one) => one.id === id && one.kind === kind);
    if (!field) throw new Error(`${calculator.id} has no ${kind} named ${id}`);
    return texts[id] ?? String(field.start);
  };
  return { number: (id) => Number(textOf(id, 'number')), choice: (id) => textOf(id, 'choice') };
}
