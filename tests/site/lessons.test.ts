import { describe, expect, it } from 'vitest';
import { loadGlossary } from '../../src/files/site/glossary.ts';
import { loadLessons, parseLesson } from '../../src/files/site/lessons.ts';
import { plainText } from '../../src/files/site/plainText.ts';

const lessons = loadLessons();

describe('the lessons', () => {
  it('are numbered from one without a gap', () => {
    expect(lessons.length).toBeGreaterThan(0);
    expect(lessons.map(({ number }) => number)).toEqual(lessons.map((_, at) => at + 1));
  });

  it.each(lessons.map((lesson) => [lesson.title, lesson] as const))(
    '“%s” opens with a question to try',
    (_, lesson) => {
      expect(lesson.body.trimStart().startsWith('<Try>')).toBe(true);
      expect(lesson.body.slice(0, lesson.body.indexOf('<Fragment slot="answer">'))).toContain('?');
    },
  );

  it.each(lessons.map((lesson) => [lesson.title, lesson] as const))(
    '“%s” takes 250 to 450 words',
    (_, lesson) => {
      const words = plainText(lesson.body).split(' ').length;
      expect(words).toBeGreaterThanOrEqual(250);
      expect(words).toBeLessThanOrEqual(450);
    },
  );

  it.each(lessons.map((lesson) => [lesson.title, lesson] as const))(
    '“%s” links only to terms that the glossary has',
    (_, lesson) => {
      const known = new Set(loadGlossary().map(({ id }) => id));
      const linked = [...lesson.body.matchAll(/\(\/glossary\/#([^)]*)\)/g)].map((match) => match[1]);
      expect(linked.filter((id) => !known.has(id ?? ''))).toEqual([]);
      expect(linked.length).toBeGreaterThan(0);
    },
  );

  it('name the edition of every approved document they quote', () => {
    const quoting = lessons
      .flatMap(({ sources }) => sources)
      .filter((source) => source.includes('Approved Document'));
    expect(quoting.length).toBeGreaterThan(0);
    expect(quoting.filter((source) => !/\b20\d\d edition\b/.test(source))).toEqual([]);
  });
});

describe('a lesson file', () => {
  const good = '---\ntitle: A\nsummary: B\nsources: [C]\n---\nText';

  it('gives an address without its number, so that reordering breaks no link', () => {
    expect(parseLesson({ name: '07-first-things.mdx', text: good })).toMatchObject({
      slug: 'first-things',
      number: 7,
      body: 'Text',
    });
  });

  it('without a summary is refused, with the file and the place named', () => {
    expect(() => parseLesson({ name: '01-a.mdx', text: good.replace('summary: B\n', '') })).toThrow(
      /01-a\.mdx: summary/,
    );
  });

  it('with a misspelt key is refused rather than ignored', () => {
    expect(() => parseLesson({ name: '01-a.mdx', text: good.replace('title', 'titel') })).toThrow(/titel/);
  });

  it('with a name that gives no place in the course is refused', () => {
    expect(() => parseLesson({ name: 'first.mdx', text: good })).toThrow(/expected a name like/);
  });
});
