import { expect, test } from 'vitest';
import { csv } from '../../src/cli/layout.ts';
import { attempt, file, right, run, wirings, wrong } from './run.ts';

const good = file('right.json', attempt(right));
const columns = [...Object.keys(wirings.spec.inputs), 'three-port', 'two-port'];

test('the table shows as many states as the verdict counts, in columns that line up', () => {
  const { code, lines } = run('table', [good]);
  const { states } = JSON.parse(run('grade', [good]).out);
  const rows = lines.slice(1, lines.indexOf(''));
  expect({ code, rows: rows.length }).toEqual({ code: 0, rows: states });
  const at = lines[0]?.indexOf('boiler') ?? -1;
  expect(new Set(rows.map((row) => row.slice(at).split(/\s+/)[0]))).toEqual(new Set(['fires', 'off']));
  expect(lines.at(-1)).toBe(`${states} states judged, 0 fail: accepted.`);
});

test('failing states are marked with a word, and what no state shows is said below', () => {
  const wires = right.filter(([a]) => a !== 'pump/L' && a !== 'pump/E');
  const { code, lines } = run('table', [file('no-pump.json', attempt(wires))]);
  const failing = lines.filter((line) => line.includes('FAILS'));
  expect(code).toBe(1);
  expect(failing.length).toBeGreaterThan(0);
  for (const line of failing) expect(line).toMatch(/FAILS\s+runs-when-called/);
  expect(lines.find((line) => line.includes('states judged'))).toContain(`${failing.length} fail: rejected.`);
  expect(lines.at(-1)).toMatch(/^Also danger, earthed: /);
});

test('CSV has a heading, lines that end in CR LF, and the same number of cells in every line', () => {
  for (const wires of [right, ...wrong.slice(0, 3)]) {
    const { out } = run('table', ['--csv', file('any.json', attempt(wires))]);
    const rows = out
      .split('\r\n')
      .slice(0, -1)
      .map((line) => line.split(','));
    expect(rows[0]).toEqual([...columns, 'boiler', 'pump', 'heat to', 'verdict', 'breaks']);
    expect(new Set(rows.map((cells) => cells.length))).toEqual(new Set([columns.length + 5]));
  }
});

// RFC 4180 (2005), section 2, points 6 and 7.
test('a cell with a comma, a quotation mark or a new line is quoted, and its quotation marks are doubled', () => {
  expect(csv({ headings: ['a', 'b,c'], rows: [['say "on"', 'two\nlines']] })).toBe(
    'a,"b,c"\r\n"say ""on""","two\nlines"\r\n',
  );
});

test('no file, two files or an unknown option: how to use the command', () => {
  for (const args of [[], [good, good], ['--cvs', good]]) {
    const { code, errors } = run('table', args);
    expect({ code, errors }).toEqual({ code: 2, errors: ['usage: npm run --silent table -- FILE [--csv]'] });
  }
});

test('bad input is one line and the exit code 2', () => {
  const { code, out, errors } = run('table', [file('bad.json', '{')]);
  expect({ code, out, count: errors.length }).toEqual({ code: 2, out: '', count: 1 });
});
