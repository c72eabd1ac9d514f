import { describe, expect, it } from 'vitest';
import { loadGlossary } from '../../src/files/site/glossary.ts';
import { loadLessons, loadParts } from '../../src/files/site/lessons.ts';
import { plainText } from '../../src/files/site/plainText.ts';

const parts = loadParts();
const lessons = loadLessons();
const each = lessons.map((lesson) => [lesson.slug, lesson] as const);

describe('the lessons', () => {
  it('are numbered from one without a gap, part by part', () => {
    expect(lessons.length).toBeGreaterThanOrEqual(35);
    expect(lessons.map(({ number }) => number)).toEqual(lessons.map((_, at) => at + 1));
    expect(parts.map(({ number }) => number)).toEqual(parts.map((_, at) => at + 1));
  });

  it.each(each)('“%s” opens with a problem to try, before it tells anything', (_, { body }) => {
    expect(body.trimStart()).toMatch(/^<(Try|Ask)\b/);
  });

  it.each(each)('“%s” is short: 200 to 700 words', (_, { body }) => {
    const words = plainText(body).split(' ').length;
    expect(words).toBeGreaterThanOrEqual(200);
    expect(words).toBeLessThanOrEqual(700);
  });

  it.each(each)('“%s” asks for each objective after telling it', (_, { body, objectives }) => {
    for (const { id } of objectives) expect(body).toContain(`<Check objective="${id}" />`);
  });

  it.each(each)('“%s” links only to terms that the glossary has', (_, { body }) => {
    const known = new Set(loadGlossary().map(({ id }) => id));
    const linked = [...body.matchAll(/\(\/glossary\/#([^)]*)\)/g)].map((match) => match[1]);
    expect(linked.filter((id) => !known.has(id ?? ''))).toEqual([]);
    expect(linked.length).toBeGreaterThan(0);
  });

  it('show circuits as live views, never as pictures', () => {
    const pictures = lessons.filter(({ body }) => /<img|!\[|```/.test(body));
    expect(pictures.map(({ slug }) => slug)).toEqual([]);
    const live = lessons.filter(({ body }) => /<(Live|Inside|Rests|WhatIf|Ask|Worked)\b/.test(body));
    expect(live.length).toBeGreaterThanOrEqual(lessons.length * 0.8);
  });

  it('name the edition of every approved document they quote', () => {
    const quoting = lessons
      .flatMap(({ sources }) => sources)
      .filter((source) => source.includes('Approved Document'));
    expect(quoting.length).toBeGreaterThan(0);
    expect(quoting.filter((source) => !/\b20\d\d edition\b/.test(source))).toEqual([]);
  });
});
