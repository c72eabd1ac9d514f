import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseJob } from '../../src/files/job.ts';
import { landingOf, writeJob } from '../../src/files/job-write.ts';
import { expandLanding } from '../../src/files/names.ts';

const folder = new URL('../../content/jobs/', import.meta.url);
const names = readdirSync(folder);
const jobs = names.map((name) => parseJob(readFileSync(new URL(name, folder), 'utf8'), name));

test('every job of the course is the same after it was written and read again', () => {
  expect(jobs.length).toBeGreaterThanOrEqual(55);
  for (const job of jobs) expect(parseJob(writeJob(job), job.id)).toEqual(job);
});

test('writing again what was written changes no byte', () => {
  for (const job of jobs) {
    const once = writeJob(job, 'https://example.org/schema/job.json');
    expect(writeJob(parseJob(once, job.id), 'https://example.org/schema/job.json')).toBe(once);
  }
});

test('the file opens with the schema that an editor checks it against, and wires stand on one line each', () => {
  const [given] = jobs.filter(({ gives }) => gives);
  const text = given ? writeJob(given, '/schema/job.json') : '';
  expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=/schema/job.json');
  expect(text).toMatch(/\n {4}strip\/1: \[ ?spur\/L/);
  expect(text).toContain('brief: >-');
});

test('whatever words a tutor writes come back as they were', () => {
  const words = fc.oneof(
    fc.string({ minLength: 1 }),
    fc.lorem({ mode: 'sentences' }),
    fc.constant('# no: "x"\n\n- y'),
  );
  fc.assert(
    fc.property(words, words, words, (title, brief, summary) => {
      const job = { id: 'mine', system: 'three-port', title, brief, summary };
      expect(parseJob(writeJob(job), 'mine.yaml')).toEqual(job);
    }),
  );
});

test('wires keep their direction and their terminals the order in which they first came', () => {
  const wires = [
    ['spur/L', 'strip/1'],
    ['pump/N', 'strip/8'],
    ['boiler/L', 'strip/1'],
  ] as const;
  expect(Object.keys(landingOf(wires))).toEqual(['strip/1', 'strip/8']);
  expect(expandLanding(landingOf(wires))).toEqual([wires[0], wires[2], wires[1]]);
});
