import lunr from 'lunr';

/** A stretch of text, and whether it was searched for. */
export interface Part {
  text: string;
  hit: boolean;
}

const stem = (word: string): string => String(lunr.stemmer(new lunr.Token(word.toLowerCase(), {})));

/** Cuts a text into stretches, marking the words whose stem is among those found. */
export function highlight(text: string, stems: Set<string>): Part[] {
  return text
    .split(/([A-Za-z0-9]+)/)
    .filter((piece) => piece !== '')
    .map((piece) => ({ text: piece, hit: stems.has(stem(piece)) }));
}

/** About `length` letters of a text around the first word found, cut between words. */
export function excerpt(text: string, stems: Set<string>, length = 170): string {
  if (text.length <= length) return text;
  let at = 0;
  for (const part of highlight(text, stems)) {
    if (part.hit) break;
    at += part.text.length;
  }
  if (at >= text.length) at = 0;
  const from = at < length / 2 ? 0 : text.indexOf(' ', at - length / 3) + 1;
  const end = text.lastIndexOf(' ', from + length);
  const to = from + length >= text.length ? text.length : end;
  return `${from > 0 ? '… ' : ''}${text.slice(from, to)}${to < text.length ? ' …' : ''}`;
}
