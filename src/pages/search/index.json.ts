import { buildSearch, searchEntries } from '../../files/site/searchIndex.ts';
import { calculatorEntries } from '../../ui/calc/entries.ts';

/** The search index as a static file, built with the site. */
export function GET(): Response {
  return new Response(JSON.stringify(buildSearch([...searchEntries(), ...calculatorEntries()])), {
    headers: { 'Content-Type': 'application/json' },
  });
}
