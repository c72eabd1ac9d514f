import * as z from 'zod';
import { checked } from './checked.ts';
import { filesIn } from './folder.ts';

const entry = z.strictObject({
  term: z.string().min(1),
  also: z.array(z.string().min(1)).default([]),
  says: z.string().min(1),
});

/** A trade term, the other names people use for it, and what it means. */
export interface Term extends z.infer<typeof entry> {
  /** Where it stands on the glossary page: the term in lower case with hyphens. */
  id: string;
}

/**
 * Reads the glossary and sorts it by term.
 * @throws Error when an entry is incomplete or a term stands twice
 */
export function parseGlossary(yaml: string): Term[] {
  const terms = checked(z.array(entry), yaml, 'glossary.yaml').map((term) => ({
    ...term,
    id: termId(term.term),
  }));
  const twice = terms.find((term, at) => terms.findIndex(({ id }) => id === term.id) !== at);
  if (twice) throw new Error(`glossary.yaml: “${twice.term}” stands twice`);
  return terms.sort((a, b) => a.id.localeCompare(b.id, 'en'));
}

/** The anchor of a term: `Two-port valve` gives `two-port-valve`. */
export function termId(term: string): string {
  return term
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** The project's glossary. */
export function loadGlossary(root?: string): Term[] {
  return parseGlossary(filesIn('content', 'glossary.yaml', root)[0]?.text ?? '[]');
}
