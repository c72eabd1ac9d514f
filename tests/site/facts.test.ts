import { describe, expect, it } from 'vitest';
import { loadFacts, loadLessons } from '../../src/files/site/lessons.ts';
import { quantitiesIn } from '../../src/files/site/quantities.ts';

const facts = loadFacts();
const lessons = loadLessons();

describe('numbers with a unit', () => {
  it('are found in running text, in tables and in captions, ranges as their two ends', () => {
    expect(
      quantitiesIn(
        'Between 60 and 65 °C for 1½ hours, 230 V; 0.75 mm² flex; terminal 7; 3.5 bar; two valves.',
      ),
    ).toEqual(['60 °C', '65 °C', '1½ hours', '230 V', '0.75 mm²', '3.5 bar']);
    expect(quantitiesIn("a 3 A fuse | 600 mm | says: 'at 10 s' 80 to 85 °C")).toEqual([
      '3 A',
      '600 mm',
      '10 s',
      '80 °C',
      '85 °C',
    ]);
  });

  it.each(lessons.map((lesson) => [lesson.slug, lesson] as const))(
    'in “%s” each come from a fact that the lesson names, with its source',
    (_, lesson) => {
      const values = new Set(
        lesson.facts.flatMap((id) => facts.get(id)?.values ?? []).flatMap((value) => quantitiesIn(value)),
      );
      expect(quantitiesIn(lesson.body).filter((quantity) => !values.has(quantity))).toEqual([]);
    },
  );

  it('are named by a lesson only where it uses them', () => {
    const idle = lessons.flatMap((lesson) => {
      const used = new Set(quantitiesIn(lesson.body));
      return lesson.facts
        .filter(
          (id) =>
            !(facts.get(id)?.values ?? []).flatMap((value) => quantitiesIn(value)).some((q) => used.has(q)),
        )
        .map((id) => `${lesson.slug}: ${id}`);
    });
    expect(idle).toEqual([]);
  });
});

describe('a fact', () => {
  it.each([...facts.values()].map((fact) => [fact.id, fact] as const))(
    '“%s” names its source; a memory is common practice',
    (_, fact) => {
      expect(fact.values.length).toBeGreaterThan(0);
      if (fact.confidence === 'M') expect(fact.source).toMatch(/common practice/i);
      if (/Approved Document/.test(fact.source)) expect(fact.source).toMatch(/\b20\d\d edition\b/);
    },
  );
});
