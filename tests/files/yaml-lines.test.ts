import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FileError } from '../../src/files/error.ts';
import { parseJob } from '../../src/files/job.ts';
import { placeAt } from '../../src/files/place.ts';
import { parseYaml } from '../../src/files/yaml.ts';
import { lineFinder, pathOf, withLine } from '../../src/files/yaml-line.ts';

const JOB = `# A comment, and an empty line

id: my-job
system: three-port
title: T
brief: >-
  Two lines
  of words.
summary: S
gives:
  locked: true
  wires:
    strip/1: [spur/L, programmer/L]
    strip/2:
      - programmer/CH-ON
      - room-stat/COM
`;

const find = lineFinder(JOB);
const trouble = (place: string) =>
  new FileError({ file: 'job.yaml', place, expected: 'this', found: 'that' });

test('A place in a message leads back to its path', () => {
  const key = fc.oneof(fc.nat({ max: 999 }), fc.string({ minLength: 1, maxLength: 50 }));
  fc.assert(
    fc.property(fc.array(key, { maxLength: 6 }), (path) => {
      const back = pathOf(placeAt(path));
      // What was spelt out for the eye cannot be read back; it ends the path.
      expect(back).toEqual(path.slice(0, back.length));
      if (path.every((one) => typeof one === 'number' || /^[\w /-]+$/.test(one))) expect(back).toEqual(path);
    }),
  );
});

describe('the line of', () => {
  test.each([
    ['a key', 'title', 5],
    ['a folded text', 'brief', 6],
    ['a key inside', 'gives.locked', 11],
    ['the second of a list on one line', 'gives.wires["strip/1"][1]', 13],
    ['the second of a list below its key', 'gives.wires["strip/2"][1]', 16],
    ['the file as a whole', 'top level', 3],
    ['a key that is not there', 'gives.extra', 10],
    ['a key that is not there at the top', 'titel', 3],
  ])('%s', (_, place, line) => {
    expect(find(place).line).toBe(line);
  });

  test('a wire counted among all is the lead that lands, and its other end the terminal', () => {
    expect(find('gives.wires[0][0]')).toEqual({ line: 13, path: ['gives', 'wires', 'strip/1', 0] });
    expect(find('gives.wires[3][0]')).toEqual({ line: 16, path: ['gives', 'wires', 'strip/2', 1] });
    expect(find('gives.wires[3][1]')).toEqual({ line: 14, path: ['gives', 'wires', 'strip/2'] });
    expect(find('gives.wires[9][0]').line).toBe(12);
  });
});

describe('a trouble with its line', () => {
  test('reads as file, line, place, what was expected', () => {
    const { message, line } = withLine(trouble('gives.wires[2][0]'), JOB);
    expect(message).toBe('job.yaml:15: gives.wires["strip/2"][0]: expected this, found that');
    expect(line).toBe(15);
  });

  test('that is a key nobody knows is on the line of the key', () => {
    const error = new FileError({
      file: 'j',
      place: 'top level',
      expected: 'one of id, system',
      found: '"summary"',
    });
    expect(withLine(error, JOB).message).toBe('j:9: top level: expected one of id, system, found "summary"');
  });

  test('keeps a line that it has', () => {
    const known = new FileError({ file: 'a', line: 3, place: 'b', expected: 'c', found: 'd' });
    expect(withLine(known, JOB)).toBe(known);
  });

  test('of text that breaks is the line where it breaks', () => {
    const broken = JOB.replace('title: T', 'title: [T');
    try {
      parseJob(broken, 'job.yaml');
      expect.unreachable();
    } catch (error) {
      expect(withLine(error as FileError, broken).message).toMatch(
        /^job\.yaml:\d+: column \d+: expected YAML/,
      );
    }
  });

  test('in a lesson counts from the top of the file', () => {
    const lesson = '---\ntitle: T\nclaims:\n  - says: S\n---\n\nText.\n';
    expect(withLine(trouble('claims[0].says'), lesson).line).toBe(4);
  });

  test('is a line of the file whatever the place and the text', () => {
    const yamls = fc.oneof(fc.constant(JOB), fc.string(), fc.json());
    fc.assert(
      fc.property(yamls, fc.oneof(fc.string(), fc.constant('a[0].b["c"]')), (text, place) => {
        const line = withLine(trouble(place), text).line ?? 0;
        expect(line).toBeGreaterThanOrEqual(place.startsWith('line ') ? 0 : 1);
        if (!place.startsWith('line ')) expect(line).toBeLessThanOrEqual(text.split('\n').length + 1);
      }),
    );
  });

  test('of JSON is found as well', () => {
    const json = '{\n  "a": 1,\n  "b": [\n    2\n  ]\n}\n';
    expect(lineFinder(json)('b[0]').line).toBe(4);
    expect(parseYaml(json, 'x')).toEqual({ a: 1, b: [2] });
  });
});
