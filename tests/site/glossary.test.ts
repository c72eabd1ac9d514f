import { describe, expect, it } from 'vitest';
import { loadGlossary, parseGlossary, termId } from '../../src/files/site/glossary.ts';

describe('the glossary', () => {
  const terms = loadGlossary();

  it('has about forty-five terms or more, in order', () => {
    expect(terms.length).toBeGreaterThanOrEqual(45);
    expect(terms.map(({ id }) => id)).toEqual([...terms.map(({ id }) => id)].sort());
  });

  it('uses each name for one thing only', () => {
    const names = terms.flatMap(({ term, also }) => [term, ...also]).map((name) => name.toLowerCase());
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });

  it.each(terms.map(({ term, says }) => [term, says]))(
    'explains “%s” in at most three sentences',
    (_, says) => {
      const sentences = says?.match(/[.?!](?=\s+[A-Z]|$)/g) ?? [];
      expect(sentences.length).toBeGreaterThanOrEqual(1);
      expect(sentences.length).toBeLessThanOrEqual(3);
    },
  );

  it('refuses a term that stands twice', () => {
    expect(() => parseGlossary('- {term: Coil, says: One.}\n- {term: coil, says: Two.}')).toThrow(
      /“coil” stands twice|“Coil” stands twice/,
    );
  });

  it('refuses an entry that explains nothing, naming its place', () => {
    expect(() => parseGlossary('- {term: Coil}')).toThrow(/glossary\.yaml: 0\.says/);
  });

  it('makes an anchor out of a term', () => {
    expect(termId('Two-port valve (spring return)')).toBe('two-port-valve-spring-return');
  });
});
