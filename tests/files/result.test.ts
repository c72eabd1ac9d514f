import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Sitting, Work } from '../../src/course/coursework/work.ts';
import { MOST_RESULT, parseResult, writeResult } from '../../src/files/result.ts';
import { MOST_WORK, MOST_WORK_WIRES } from '../../src/files/work-schema.ts';
import { version4 } from '../store/fixtures/version-4.ts';

const [kept] = version4.sittings as unknown as Sitting[];
const sitting = kept as Sitting;
const { id: _, at: __, ...handed } = sitting;
const MADE = 1_789_200_000_000;
const text = writeResult(sitting, MADE);
const data = JSON.parse(text) as { handed: Record<string, unknown> & { work: Record<string, unknown>[] } };
/** The same file with something else handed in, and a checksum that fits it, as a clever hand would make it. */
const forged = (given: object) => writeResult({ ...sitting, ...given } as Sitting, MADE);
const forgedWork = (given: object) => forged({ work: [{ ...sitting.work[0], ...given }] });
const name = fc.string({ minLength: 1, maxLength: 20, unit: 'grapheme' });
const base = {
  slot: name,
  attempt: fc.integer({ min: 1, max: 10 }),
  at: fc.nat(),
  took: fc.nat(),
  hints: fc.integer({ min: 0, max: 3 }),
  right: fc.boolean(),
};
const plain = { noNullPrototype: true };
const answers = fc.oneof(
  fc.record({ kind: fc.constant('choice'), chosen: fc.array(name) }),
  fc.record({ kind: fc.constant('mark'), marked: fc.array(name) }),
  fc.record({ kind: fc.constant('place'), landed: fc.dictionary(name, name, plain) }),
  fc.record({
    kind: fc.constant('set'),
    settings: fc.dictionary(fc.stringMatching(/^[a-z]{1,8}$/), name, plain),
  }),
  fc.record({ kind: fc.constant('order'), steps: fc.array(name) }),
  fc.record({ kind: fc.constant('number'), typed: fc.string({ maxLength: 20 }) }),
);
const end = fc.stringMatching(/^[a-z-]{1,9}\/[A-Z0-9-]{1,9}$/);
const works = fc.oneof(
  fc.record({ ...base, kind: fc.constant('question'), item: name, answer: answers }),
  fc.record({ ...base, kind: fc.constant('job'), wires: fc.array(fc.tuple(end, end), { maxLength: 8 }) }),
  fc.record({
    ...base,
    kind: fc.constant('visit'),
    callout: name,
    said: name,
    acts: fc.constant([{ do: 'isolate' }]),
  }),
) as unknown as fc.Arbitrary<Work>;

test('A result is read as it was written: the coursework, the learner, the times, every piece of work', () => {
  expect(parseResult(text, 'r.json')).toEqual({ ...handed, made: MADE });
  fc.assert(
    fc.property(fc.array(works, { maxLength: 6 }), (work) => {
      const read = parseResult(writeResult({ ...handed, work }, MADE), 'r.json');
      expect(read.work).toEqual(JSON.parse(JSON.stringify(work)));
    }),
  );
});

test('Keys of a college’s own beside ours are passed over, also after years', () => {
  const own = JSON.stringify({ ...data, group: 'Tuesday', __proto: { a: [[[1]]] } });
  expect(parseResult(own, 'r.json')).toEqual({ ...handed, made: MADE });
});

test('A result with one letter changed is refused in one line, or it still says the same', () => {
  fc.assert(
    fc.property(
      fc.nat({ max: text.length - 1 }),
      fc.constantFrom('0', '7', 'x', '"', '}', ' '),
      (at, letter) => {
        try {
          const { made, ...read } = parseResult(text.slice(0, at) + letter + text.slice(at + 1), 'r.json');
          expect(read).toEqual(handed);
          expect(made).toBeGreaterThan(0);
        } catch (problem) {
          expect((problem as Error).name).toBe('FileError');
          expect((problem as Error).message).toMatch(/^r\.json: .*expected .*, found .*$/);
        }
      },
    ),
  );
});

describe('a damaged or hostile file is refused by name', () => {
  const wires = (count: number) => new Array(count).fill(['a/1', 'a/2']);
  const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
  test.each<[string, string, string]>([
    ['nothing', '', 'expected JSON text, found nothing'],
    ['a picture', '\u0089PNG\r\n\u001a', 'line 1, column 1'],
    ['a list', '[]', 'top level: expected a result'],
    ['null', 'null', 'top level: expected a result'],
    ['half a file', text.slice(0, 200), 'line 1'],
    [
      'a later version',
      JSON.stringify({ ...data, result: 2 }),
      'result: expected 1, the version of the format',
    ],
    ['a mark changed by hand', text.replace('"right":false', '"right":true'), 'checksum: expected'],
    ['more than 2 MB', ' '.repeat(MOST_RESULT + 1), 'top level: expected at most 2 MB'],
    [
      '2,001 pieces of work',
      forged({ work: new Array(MOST_WORK + 1).fill(1) }),
      `handed.work: expected a list of at most ${MOST_WORK}`,
    ],
    [
      '2,001 wires',
      forgedWork({ kind: 'job', item: undefined, answer: undefined, wires: wires(MOST_WORK_WIRES + 1) }),
      `handed.work[0].wires: expected a list of at most ${MOST_WORK_WIRES} wires`,
    ],
    ['work that is a list', forged({ work: [[]] }), 'handed.work[0]: expected a piece of work'],
    [
      'work of no kind',
      forgedWork({ kind: 'essay' }),
      'handed.work[0].kind: expected a piece of work with a kind',
    ],
    [
      'an answer of no kind',
      forgedWork({ answer: { kind: 'shout' } }),
      'handed.work[0].answer.kind: expected an answer',
    ],
    [
      'attempt number zero',
      forgedWork({ attempt: 0 }),
      'handed.work[0].attempt: expected a number of attempts from 1',
    ],
    [
      'a time beyond all dates',
      forgedWork({ at: 1e300 }),
      'handed.work[0].at: expected milliseconds since 1970',
    ],
    [
      'a code that is a formula',
      forged({ learner: { code: '=1+1' } }),
      'handed.learner.code: expected a learner code',
    ],
    [
      'an endless name',
      forged({ learner: { code: 'AB', name: 'x'.repeat(81) } }),
      'handed.learner.name: expected a name',
    ],
    [
      'a key of its own inside',
      forged({ coursework: { ...sitting.coursework, extra: 1 } }),
      'handed.coursework: expected one of',
    ],
    [
      'a coursework that cannot be',
      forged({ coursework: { ...sitting.coursework, pass: 9 } }),
      'handed.coursework: pass: expected at most 3',
    ],
    [
      'an answer far too deep',
      text.replace('["strip/1","programmer/L"]', deep),
      'handed.work[0].answer.marked',
    ],
    [
      'something deep in place of all',
      JSON.stringify({ ...data, handed: 0 }).replace('"handed":0', `"handed":${deep}`),
      'handed: expected what is handed in',
    ],
  ])('%s', (_name, spoilt, says) => {
    expect(() => parseResult(spoilt, 'r.json')).toThrow(says);
    expect(() => parseResult(spoilt, 'r.json')).toThrow(/^r\.json/);
  });

  test('names that a program must mind change nothing', () => {
    const spoilt = [
      text.replace('{"result"', '{"__proto__":{"polluted":true},"result"'),
      text.replace('"kind":"mark"', '"__proto__":{"polluted":true},"kind":"mark"'),
      text.replace('"learner":{', '"learner":{"constructor":{"prototype":{"polluted":true}},'),
    ];
    for (const one of spoilt) {
      expect(one).not.toBe(text);
      try {
        const read = parseResult(one, 'r.json');
        expect(JSON.stringify(read)).not.toContain('polluted');
      } catch (problem) {
        expect((problem as Error).name).toBe('FileError');
      }
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    }
  });
});
