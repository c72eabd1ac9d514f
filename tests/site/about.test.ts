import { existsSync, globSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { loadLicences } from '../../src/files/site/licences.ts';
import { criteria } from '../../src/pages/about/_criteria.ts';
import { kept, keptAs } from '../../src/pages/about/_kept.ts';

/*
  The success criteria of WCAG 2.2 at levels A and AA, from the Recommendation of 12 December 2024: 4.1.1 is obsolete and
  removed, and nine were added since 2.1, six of them at A or AA.
*/
const A =
  `1.1.1 1.2.1 1.2.2 1.2.3 1.3.1 1.3.2 1.3.3 1.4.1 1.4.2 2.1.1 2.1.2 2.1.4 2.2.1 2.2.2 2.3.1 2.4.1 2.4.2 2.4.3
  2.4.4 2.5.1 2.5.2 2.5.3 2.5.4 3.1.1 3.2.1 3.2.2 3.2.6 3.3.1 3.3.2 3.3.7 4.1.2`.split(/\s+/);
const AA =
  `1.2.4 1.2.5 1.3.4 1.3.5 1.4.3 1.4.4 1.4.5 1.4.10 1.4.11 1.4.12 1.4.13 2.4.5 2.4.6 2.4.7 2.4.11 2.5.7 2.5.8
  3.1.2 3.2.3 3.2.4 3.3.3 3.3.4 3.3.8 4.1.3`.split(/\s+/);

describe('The accessibility statement', () => {
  test('has every success criterion of WCAG 2.2 at A and AA once', () => {
    const ids = (level: string) => criteria.filter((one) => one.level === level).map(({ id }) => id);
    expect(ids('A').toSorted()).toEqual(A.toSorted());
    expect(ids('AA').toSorted()).toEqual(AA.toSorted());
  });

  test('names only tests that are there', () => {
    for (const { id, tests } of criteria)
      for (const file of tests) expect(existsSync(file), `${id}: ${file}`).toBe(true);
  });

  test('shows no claim without how, and a partial one always says what is lacking', () => {
    for (const { id, met, how, tests } of criteria) {
      expect(how.length, id).toBeGreaterThan(15);
      if (met === 'does not apply') expect(tests, id).toEqual([]);
    }
    expect(criteria.some(({ met }) => met === 'partly')).toBe(true);
  });
});

describe('The privacy page', () => {
  test('names every key under which the source keeps something', () => {
    const found = globSync('src/**/*.{ts,svelte,astro}')
      .map((file) => ({ file, text: readFileSync(file, 'utf8') }))
      .filter(({ text }) => /localStorage|sessionStorage|openDB/.test(text))
      .flatMap(({ file, text }) =>
        [...text.matchAll(/['"`](switched-live(?:[/-][\w/-]*)?)(?:\$\{[^}]*\})?[^'"`]*['"`]/g)].map(
          ([, name = '']) => ({ file, name }),
        ),
      )
      // The name alone with its stroke is a beginning that keys are found by; with a hyphen it is a file’s.
      .filter(({ name }) => !/live[-/]$/.test(name));
    const places = ['local storage', 'database', 'this tab'] as const;
    expect(found.length).toBeGreaterThan(8);
    for (const { name, file } of found)
      expect(
        places.some((place) => keptAs(`${name}x`, place) ?? keptAs(name, place)),
        `${name} in ${file}`,
      ).toBe(true);
  });

  test('tells how to be rid of each thing', () => {
    for (const one of kept) expect(one.delete, one.name).not.toBe('');
    expect(keptAs('switched-live/wiring/1/three-port~ab12', 'local storage')?.what).toBe('Wires of a job');
    expect(keptAs('tracker', 'local storage')).toBeUndefined();
  });
});

test('The licences page has a text for everything that is shipped, the fonts’ open font licence among them', () => {
  const shipped = loadLicences().filter((one) => one.shipped);
  expect(shipped.length).toBeGreaterThan(5);
  for (const { name, licence, text } of shipped) {
    expect(licence, name).not.toBe('');
    expect(text.length, name).toBeGreaterThan(300);
  }
  const fonts = shipped.filter(({ name }) => name.startsWith('@fontsource'));
  expect(fonts.map(({ licence }) => licence)).toEqual(['OFL-1.1', 'OFL-1.1']);
  for (const { text } of fonts) expect(text).toContain('SIL OPEN FONT LICENSE');
});

test('The field for a name says to the browser that it is one (WCAG 2.2, 1.3.5)', () => {
  expect(readFileSync('src/ui/coursework/Who.svelte', 'utf8')).toContain('autocomplete="name"');
});
