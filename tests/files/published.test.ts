import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { parseAttempt } from '../../src/files/attempt.ts';
import { formatNames, publishedSchema } from '../../src/files/published.ts';

/** A checker made from the published schema alone, read back as a stranger would read it. */
const stranger = (format: string) => z.fromJSONSchema(JSON.parse(JSON.stringify(publishedSchema(format))));

test('every format that people write or keep is published, each as JSON Schema of 2020-12', () => {
  const objects = ['system', 'job', 'attempt', 'bench', 'quiz', 'backup', 'callout'];
  const lists = ['double-faults'];
  expect(formatNames()).toEqual([...objects, ...lists, 'coursework', 'result', 'stage']);
  for (const format of formatNames())
    expect(publishedSchema(format)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: lists.includes(format) ? 'array' : 'object',
    });
});

test.each([
  ['system', 'systems'],
  ['job', 'jobs'],
  ['quiz', 'quizzes'],
  ['callout', 'callouts'],
  ['coursework', 'coursework'],
  ['stage', 'stage'],
])('every %s of the course fits the published schema', (format, where) => {
  const folder = new URL(`../../content/${where}/`, import.meta.url);
  const names = readdirSync(folder);
  expect(names.length).toBeGreaterThan(0);
  for (const name of names) {
    const data = parse(readFileSync(new URL(name, folder), 'utf8'));
    expect(stranger(format).safeParse(data).error?.issues ?? []).toEqual([]);
    expect(stranger(format).safeParse({ ...data, titel: 'x' }).success).toBe(false);
  }
});

test('the double faults of the course fit the published schema, and a fault that is two things does not', () => {
  const text = readFileSync(new URL('../../content/double-faults.yaml', import.meta.url), 'utf8');
  const data = parse(text) as { faults: object[] }[];
  const check = stranger('double-faults');
  expect(check.safeParse(data).error?.issues ?? []).toEqual([]);
  const both = { fail: 'a/b', link: ['a/1', 'a/2'] };
  expect(check.safeParse([{ ...data[0], faults: [both, both] }]).success).toBe(false);
  expect(check.safeParse([{ ...data[0], faults: [] }]).success).toBe(false);
});

describe('the published schema of an attempt and the parser agree', () => {
  const wire = ['spur/L', 'strip/1'];
  test.each([
    ['an attempt with keys of its own', { job: 'a', wires: [wire], pupil: { no: 7 } }, true],
    ['no wires yet', { job: 'a', wires: [] }, true],
    ['2,000 wires', { job: 'a', wires: Array(2000).fill(wire) }, true],
    ['2,001 wires', { job: 'a', wires: Array(2001).fill(wire) }, false],
    ['a wire with one end', { job: 'a', wires: [['spur/L']] }, false],
    ['a wire with three ends', { job: 'a', wires: [[...wire, 'strip/2']] }, false],
    ['an end without a part', { job: 'a', wires: [['L', 'strip/1']] }, false],
    ['no job', { wires: [wire] }, false],
    ['a job without a name', { job: '', wires: [wire] }, false],
    ['a list', [], false],
  ])('%s', (_, data, fits) => {
    const parses = () => parseAttempt(JSON.stringify(data), 'a.json');
    expect(stranger('attempt').safeParse(data).success).toBe(fits);
    if (fits) expect(parses()).toMatchObject({ job: 'a' });
    else expect(parses).toThrow('a.json: ');
  });
});
