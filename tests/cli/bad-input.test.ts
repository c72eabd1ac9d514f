import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { attempt, file, node, right, root, run, scratch } from './run.ts';

const deep = (inside = '') => '['.repeat(100_000) + inside + ']'.repeat(100_000);
const wires = (...given: unknown[]) => attempt(given);
const bell = String.fromCharCode(27);

/** Each is one attempt; the message must hold all of the words. */
const cases: readonly [title: string, content: string | Uint8Array, ...words: string[]][] = [
  ['JSON that is cut off', attempt(right).slice(0, 300), 'line 1, column 301', 'quotation mark', 'the end'],
  ['an empty file', '', 'line 1, column 1', 'expected JSON', 'nothing'],
  ['a file of spaces', ' \n \n', 'expected JSON', 'nothing'],
  ['a binary file', Uint8Array.of(0x7f, 0x45, 0x4c, 0x46, 2, 1, 0), 'line 1, column 1'],
  [
    'text that is not UTF-8',
    Uint8Array.of(0x7b, 0x0a, 0x22, 0xe9, 0x22),
    'line 2, column 2',
    'UTF-8',
    '0xe9',
  ],
  ['a list instead of an attempt', '[]', 'top level', 'expected an attempt', 'an empty list'],
  ['null instead of an attempt', 'null', 'top level', 'null'],
  ['an attempt without a job', '{"wires":[]}', 'job', 'nothing'],
  ['an attempt without wires', '{"job":"unvented-three-port"}', 'wires', 'a list of wires', 'nothing'],
  ['a job that is a number', attempt([], 7), 'job', 'found 7'],
  ['a job nobody knows', attempt([], 'unvented-tree-port'), 'job', 'did you mean "unvented-three-port"?'],
  ['a job called __proto__', attempt([], '__proto__'), 'job', '"__proto__"'],
  ['a job that is a way out of the folder', attempt([], '../systems/unvented-three-port'), 'job', 'one of'],
  ['wires that are not a list', attempt({ 0: ['spur/L', 'strip/1'] }), 'wires', 'a list of wires'],
  [
    'a wire with one end',
    wires(['spur/L', 'strip/1'], ['spur/N']),
    'wires[1]',
    'two terminals',
    'a list of 1',
  ],
  ['a wire with three ends', wires(['spur/L', 'strip/1', 'strip/2']), 'wires[0]', 'a list of 3'],
  ['a wire that is text', wires('spur/L strip/1'), 'wires[0]', 'two terminals'],
  ['an end that is a number', wires(['spur/L', 1]), 'wires[0][1]', 'part/terminal', 'found 1'],
  ['an end without a part', wires(['L', 'strip/1']), 'wires[0][0]', 'part/terminal', '"L"'],
  ['a part that does not exist', wires(['spurr/L', 'strip/1']), 'wires[0][0]', 'did you mean "spur"?'],
  ['a terminal that does not exist', wires(['spur/L', 'strip/13']), 'wires[0][1]', 'of strip', '"strip/13"'],
  ['a terminal nearly right', wires(['programmer/HWON', 'strip/2']), 'did you mean "HW-ON"?'],
  ['a node inside a part', wires(['spur/(line)', 'strip/1']), 'wires[0][0]', 'a terminal of spur'],
  ['a part called __proto__', wires(['__proto__/L', 'strip/1']), 'wires[0][0]', '"__proto__/L"'],
  ['a terminal called constructor', wires(['spur/constructor', 'strip/1']), 'wires[0][0]', 'of spur'],
  ['a wire back to its own terminal', wires(['spur/L', 'spur/L']), 'wires[0]', 'two different terminals'],
  ['an attempt that hides in __proto__', `{"__proto__":${attempt(right)}}`, 'job', 'nothing'],
  ['a list 100,000 deep', deep(), 'top level', 'a list of 1'],
  ['wires 100,000 deep', `{"job":"unvented-three-port","wires":${deep('1')}}`, 'wires[0]', 'a list of 1'],
  ['100,000 lists that nobody closes', '['.repeat(100_000), 'column 100001', 'the end'],
  ['2,001 wires', attempt(Array(2001).fill(['spur/L', 'strip/1'])), 'wires', '2000 wires', 'a list of 2001'],
  ['two attempts in a file', `${attempt(right)}\n${attempt(right)}`, 'line 2, column 1', 'nothing more'],
  ['a file of more than 1 MiB', ' '.repeat((1 << 20) + 1), '1048576 bytes', 'more'],
  ['text that would colour the screen', `{"job":"${bell}[31mred"}`, '\\\\u{1b}[31mred'.slice(1)],
  ['a name a megabyte long', attempt([], 'x'.repeat(1_000_000)), 'job', 'xxx…"'],
];

describe('bad input gets one clear line, no stack trace and the exit code 2', () => {
  // All in one run: what is wrong with one must not keep the next from being read.
  const paths = cases.map(([title, content]) => file(`${title.replaceAll(/\W+/g, '-')}.json`, content));
  const { code, out, errors } = run('grade', paths);

  test('every one is refused', () => {
    expect({ code, out, count: errors.length }).toEqual({ code: 2, out: '', count: cases.length });
  });

  test.each(cases.map(([title, , ...words], k) => ({ title, words, k })))('$title', ({ words, k }) => {
    const line = errors[k] ?? '';
    expect(line.startsWith(`${paths[k]}: `)).toBe(true);
    for (const word of ['expected', 'found', ...words]) expect(line).toContain(word);
    expect(line.length - (paths[k]?.length ?? 0)).toBeLessThan(300);
    expect(line).not.toMatch(/\p{Cc}|\bat .*:\d+:\d+|node:/u);
  });

  test('a file that is not there, and a folder', () => {
    const { code, errors } = run('grade', ['no-such-file.json', scratch]);
    expect(errors).toEqual([
      'no-such-file.json: expected a file, found no such file',
      `${scratch}: expected a file, found a folder`,
    ]);
    expect(code).toBe(2);
  });

  test('no file at all: how to use the command', () => {
    const { code, errors } = run('grade', []);
    expect({ code, count: errors.length }).toEqual({ code: 2, count: 1 });
    expect(errors[0]).toMatch(/^usage: npm run --silent grade -- FILE/);
  });
});

describe('standard input', () => {
  test('nothing on it is bad input', () => {
    const { code, errors } = run('grade', ['-']);
    expect({ code, errors }).toEqual({
      code: 2,
      errors: ['standard input, line 1: expected an attempt a line, found nothing'],
    });
  });

  test('an empty line, a broken one, one too long and one that is not UTF-8 are named by their number', () => {
    const bytes = Buffer.concat([
      Buffer.from(`${attempt(right)}\n\n{"job"\n${'x'.repeat(3 << 20)}\n`),
      Uint8Array.of(0xff, 0x0a),
      Buffer.from(attempt([['spur/L']])),
    ]);
    const { code, lines, errors } = run('grade', ['-'], bytes);
    expect({ code, verdicts: lines.length }).toEqual({ code: 2, verdicts: 1 });
    expect(errors.map((line) => line.split(': expected')[0])).toEqual([
      'standard input, line 2: column 1',
      'standard input, line 3: column 7',
      'standard input, line 4: top level',
      'standard input, line 5: column 1',
      'standard input, line 6: wires[0]',
    ]);
  });

  test('a reader that leaves early gets whole lines and no stack trace', () => {
    const path = file('many.jsonl', `${attempt(right.slice(1))}\n`.repeat(2000));
    const command = `"${node}" "${join(root, 'src/cli/grade.ts')}" - < "${path}" | head -n 1`;
    const { stdout, stderr } = spawnSync('sh', ['-c', command], { encoding: 'utf8' });
    expect(JSON.parse(stdout).accepted).toBe(false);
    expect(stderr).toBe('');
  });
});

test('npm run passes the words and the exit code on, wherever it is started', () => {
  file('here.json', attempt(right.slice(1)));
  const args = ['--prefix', root, 'run', '--silent', 'grade', '--', 'here.json'];
  const { status, stdout, stderr } = spawnSync('npm', args, { cwd: scratch, encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
  expect(JSON.parse(stdout).accepted).toBe(false);
});
