import type { Entry } from '../../files/site/searchIndex.ts';
import { calculators } from './index.ts';

/** The calculators as entries of the search. */
export function calculatorEntries(): Entry[] {
  return calculators.map(({ id, title, summary, also }) => ({
    kind: 'Calculator',
    to: `/calculators/${id}/`,
    title,
    also,
    text: summary,
  }));
}
