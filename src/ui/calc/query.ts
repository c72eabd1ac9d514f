import type { Calculator } from './calculator.ts';
import { startTexts, type Texts } from './read.ts';

/** The texts that an address brings: its query where it names a field, the start of every other. */
export function textsOf(calculator: Calculator, query: string): Record<string, string> {
  const asked = new URLSearchParams(query);
  const start = startTexts(calculator);
  return Object.fromEntries(Object.entries(start).map(([id, text]) => [id, asked.get(id) ?? text]));
}

/** The query that brings these texts back, with its question mark; empty when they are those of the start. */
export function queryOf(calculator: Calculator, texts: Texts): string {
  const changed = Object.entries(startTexts(calculator)).filter(([id, text]) => (texts[id] ?? text) !== text);
  if (changed.length === 0) return '';
  return `?${new URLSearchParams(changed.map(([id]) => [id, texts[id] ?? '']))}`;
}
