import { describe, expect, it } from 'vitest';
import { uuidOf } from '../../tools/package/cmi5.ts';
import { packed, works } from './support/packed.ts';
import { schema, troubles } from './support/schema.ts';
import { coursework } from './support/site.ts';

// cmi5 specification, section 13.2, Course Structure XSD; see tests/packages/schemas/README.md.
const schemas = [schema('tests/packages/schemas/CourseStructure.xsd')];

const structureOf = (work = works[0], passMark?: number): string =>
  (work && packed('cmi5', work, passMark).get('cmi5.xml')) ?? '';

describe('a package for cmi5', () => {
  it('has a valid course structure, whatever it is made of', async () => {
    const made = works.flatMap((work) => [undefined, 0.8, 2 / 3, 1].map((mark) => structureOf(work, mark)));
    expect(await troubles(made, schemas)).toEqual(made.map(() => []));
  });

  it('would be refused with any of these', async () => {
    const sound = structureOf(works[0], 0.8);
    const wrong: readonly [string | RegExp, string][] = [
      // a rule of our own making
      ['moveOn="Passed"', 'moveOn="Solid"'],
      // a mastery score in per cent
      ['masteryScore="0.8"', 'masteryScore="80"'],
      // no address to open
      [/<url>.*<\/url>/, ''],
      // no description
      [/<description>.*<\/description>/, ''],
    ];
    const broken = wrong.map(([from, to]) => sound.replace(from, to));
    expect(broken).not.toContain(sound);
    const found = await troubles(broken, schemas);
    expect(found.map((one) => one.length > 0)).toEqual(wrong.map(() => true));
  });

  // Section 14.1: the structure is at the root of the zip; what is in the zip is named by relative references.
  it('has the structure first at its root, and opens a page that is in it', () => {
    const files = packed('cmi5', { kind: 'course', title: 'x' });
    expect([...files.keys()][0]).toBe('cmi5.xml');
    const [, url = ''] = /<url>(.*)<\/url>/.exec(structureOf()) ?? [];
    expect(files.has(url)).toBe(true);
    expect(files.has('imsmanifest.xml')).toBe(false);
  });

  // Section 13.1.4: at most four decimal places, from 0 to 1.
  it('has a mastery score when a pass mark is asked for', () => {
    expect(structureOf()).not.toContain('masteryScore');
    expect(structureOf(works[0], 2 / 3)).toContain('masteryScore="0.6667"');
  });

  it('has identifiers that stay from one making to the next and differ between courseworks', () => {
    const ids = (text: string) => [...text.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    const other = { ...coursework, id: 'another' };
    const all = [
      structureOf(),
      structureOf(works[1]),
      structureOf({ kind: 'coursework', coursework: other }),
    ];
    expect(ids(structureOf())).toEqual(ids(all[0] ?? ''));
    expect(new Set(all.flatMap(ids)).size).toBe(6);
  });

  it('makes name-based identifiers of version 5', () => {
    // RFC 9562, sections 4.1, 4.2 and 5.5: the variant and the version in their places.
    expect(uuidOf('a')).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });
});
