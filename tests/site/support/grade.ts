import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';
import { wordsOf } from '../../../src/files/site/prose.ts';

/**
 * Reading grade by the Flesch–Kincaid formula (J. P. Kincaid and others, 1975), with the libraries `flesch-kincaid` and
 * `syllable`. A grade is about an age less five: the sixth grade is read at eleven to twelve.
 */
export function gradeOf(sentences: readonly string[]): number {
  const words = sentences.flatMap(wordsOf);
  const syllables = words.reduce((sum, word) => sum + syllable(word), 0);
  return fleschKincaid({ sentence: sentences.length, word: words.length, syllable: syllables });
}
