import { describe, expect, it } from 'vitest';
import { loadLessons } from '../../src/files/site/lessons.ts';
import { sentencesOf } from '../../src/files/site/prose.ts';
import { everyday, formsOf, inGlossary, isKnown, rareWords } from './support/rare-words.ts';

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
    const used = new Set(loadLessons().flatMap(({ body }) => rareWords(sentencesOf(body)).flatMap(formsOf)));
    expect([...everyday].filter((word) => !used.has(word) || inGlossary.has(word))).toEqual([]);
  });
});
