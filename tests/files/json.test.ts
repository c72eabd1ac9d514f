import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseJson } from '../../src/files/json.ts';
import { whereJsonBreaks } from '../../src/files/json-break.ts';
import { lineColumn } from '../../src/files/place.ts';

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

/** JSON with a piece cut out and another put in, and text of JSON's own signs. */
const broken = fc.oneof(
  fc
    .tuple(
      fc.json({ maxDepth: 4 }),
      fc.nat(),
      fc.nat(4),
      fc.constantFrom('', ',', ']', '}', '{', '"', ':', '0', '\\', '\n'),
    )
    .map(([json, at, length, other]) => {
      const k = at % (json.length + 1);
      return json.slice(0, k) + other + json.slice(k + length);
    }),
  fc.string({ unit: fc.constantFrom(...'[]{},:"\\ 0-1.e+tnul\n\t\u0001é'), maxLength: 12 }),
);

test('text breaks at its end, with nothing more to come, exactly when JSON.parse takes it', () => {
  const seen = { sound: 0, broken: 0 };
  fc.assert(
    fc.property(broken, (text) => {
      const { offset, expected } = whereJsonBreaks(text);
      const isWhole = offset === text.length && expected === 'nothing more';
      seen[isWhole ? 'sound' : 'broken']++;
      return isWhole === isJson(text);
    }),
    { seed: 7, numRuns: 5000 },
  );
  expect(Math.min(seen.sound, seen.broken)).toBeGreaterThan(300);
});

test('no text that starts as the text before the break does is JSON, whatever follows up to there', () => {
  expect(whereJsonBreaks('{"a": [1, 2,, 3]}')).toEqual({ offset: 12, expected: 'a value' });
  expect(whereJsonBreaks('{"a" 1}')).toEqual({ offset: 5, expected: 'a colon' });
  expect(whereJsonBreaks('{"a": 01}')).toEqual({ offset: 6, expected: 'a value' });
  expect(whereJsonBreaks('[1 2]')).toEqual({ offset: 3, expected: 'a comma or ]' });
  expect(whereJsonBreaks('[1,]')).toEqual({ offset: 3, expected: 'a value' });
  expect(whereJsonBreaks('{"a": 1,}')).toEqual({ offset: 8, expected: 'a key in quotation marks' });
});

test('lines and columns are counted from 1', () => {
  expect(lineColumn('ab\ncd', 0)).toBe('line 1, column 1');
  expect(lineColumn('ab\ncd', 4)).toBe('line 2, column 2');
  expect(() => parseJson('{\n  "job": x\n}', 'a.json')).toThrow(
    'a.json: line 2, column 10: expected a value, found "x"',
  );
});

test('a megabyte of unclosed text or of escapes, and a list 100,000 deep are searched without running out of room', () => {
  expect(whereJsonBreaks(`"${'\\n'.repeat(500_000)}`).offset).toBe(1_000_001);
  expect(whereJsonBreaks(`"${'x'.repeat(1_000_000)}`).offset).toBe(1_000_001);
  expect(whereJsonBreaks('['.repeat(100_000)).offset).toBe(100_000);
});
