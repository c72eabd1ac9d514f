import { describe, expect, it } from 'vitest';
import { loadLessons } from '../../src/files/site/lessons.ts';
import { sentencesOf, wordsOf } from '../../src/files/site/prose.ts';
import { gradeOf } from './support/grade.ts';

describe('the measure', () => {
  it('puts a plain sentence low and a wordy one high', () => {
    expect(gradeOf(['The valve is shut. '])).toBeLessThan(2);
    expect(
      gradeOf([
        'Notwithstanding considerable operational complexity, interconnection necessitates verification.',
      ]),
    ).toBeGreaterThan(18);
  });

  it('takes headings, items and captions for sentences and leaves tables and tags out', () => {
    const mdx =
      "## The call\n\nIt goes on. Then <Caution>it stops.</Caution>\n\n| a | b |\n\n- one\n- two\n\n<Live steps={[{ says: 'White is live.' }]} />";
    expect(sentencesOf(mdx)).toEqual([
      'The call.',
      'It goes on.',
      'Then it stops.',
      'one.',
      'two.',
      'White is live.',
    ]);
  });
});

describe.each(loadLessons().map((lesson) => [lesson.slug, lesson] as const))('“%s”', (_, { body }) => {
  const sentences = sentencesOf(body);

  it('is written for a reading age of about 12', () => {
    expect(gradeOf(sentences)).toBeLessThanOrEqual(6.5);
  });

  it('has no sentence of more than 25 words, and 14 on average at most', () => {
    const lengths = sentences.map((sentence) => wordsOf(sentence).length);
    expect(sentences.filter((sentence) => wordsOf(sentence).length > 25)).toEqual([]);
    expect(lengths.reduce((a, b) => a + b, 0) / lengths.length).toBeLessThanOrEqual(14);
  });
});
