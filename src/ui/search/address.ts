import { highlight } from './highlight.ts';
import type { Hit } from './query.ts';

/** The most words that an address carries. */
const MOST = 6;

/** The words of an entry that it was found by, as they stand in it, each once. */
export function wordsFound({ entry, stems }: Hit): string[] {
  const text = `${entry.title} ${entry.also} ${entry.text}`;
  const words = highlight(text, stems).flatMap((part) => (part.hit ? part.text.toLowerCase() : []));
  return [...new Set(words)].slice(0, MOST);
}

/** Where a result leads: its page and place, with the words to mark there after `hl=`. */
export function addressOf(hit: Hit): string {
  const [path = '', anchor] = hit.entry.to.split('#', 2);
  const words = wordsFound(hit).map(encodeURIComponent).join('+');
  return `${path}${words ? `?hl=${words}` : ''}${anchor ? `#${anchor}` : ''}`;
}
