import { expect, test } from 'vitest';
import { attempt, file, right, run } from './run.ts';

const good = file('right.json', attempt(right));

test('a day comes as CSV: a heading, then a row a minute, each with as many cells', () => {
  const { code, out, errors } = run('heat', [good]);
  expect({ code, errors }).toEqual({ code: 0, errors: [] });
  const rows = out.split('\r\n').slice(0, -1);
  expect(rows[0]).toBe('time s,store °C,flow °C,boiler,pump,three-port,two-port,events');
  expect(rows.length).toBe(1 + 24 * 60 + 1);
  for (const [k, row] of rows.slice(1).entries()) {
    const [seconds, store, flow, boiler, pump, three, two] = row.split(',');
    expect(Number(seconds)).toBe(k * 60);
    for (const celsius of [store, flow]) expect(celsius).toMatch(/^\d{1,3}\.\d\d$/);
    expect(['alight', 'off']).toContain(boiler);
    expect(['runs', 'off']).toContain(pump);
    expect(['B', 'mid', 'A']).toContain(three);
    expect(['shut', 'part open', 'open']).toContain(two);
  }
});

// RFC 4180 (2005), section 2, point 6: a cell with a comma stands in quotation marks.
test('failures strike at the hour given and what they do stands in the last column', () => {
  const args = [
    good,
    '--fail',
    'cyl-stat: welded calling',
    '--fail',
    'cut-out: failed closed',
    '--at',
    '2',
    '--hours',
    '12',
  ];
  const { code, lines } = run('heat', args);
  const row = (start: string) => lines.find((line) => line.startsWith(start)) ?? '';
  expect({ code, count: lines.length }).toEqual({ code: 0, count: 1 + 12 * 60 + 1 });
  expect(row('7200,')).toContain(
    'the cylinder thermostat is welded on its call and the cut-out fails to trip',
  );
  expect(lines.find((line) => line.includes('still the boiler heats the store'))).toBeDefined();
  expect(lines.find((line) => line.includes('reaches 80 °C'))).toMatch(
    /,"The store .*, but the cut-out fails to trip\.( .*)?"\r?$/,
  );
});

test.each([
  [
    ['--fail', 'two-port: stuk open'],
    ['--fail: expected one of two-port:', 'did you mean "two-port: stuck open"?'],
  ],
  [['--fail', 'tow-port: passing'], ['did you mean "two-port: passing"?']],
  [
    ['--fail', 'nonsense'],
    ['--fail: expected one of spur: fuse blown', 'found "nonsense"'],
  ],
  [
    ['--fail', 'two-port: stuck open', '--fail', 'two-port: stuck shut'],
    [
      'expected a failure that can be there together with "two-port: stuck open", found "two-port: stuck shut"',
    ],
  ],
  [['--hours', '0'], ['--hours: expected a number from 0.1 to 168 hours, found "0"']],
  [
    ['--hours', 'a day'],
    ['--hours: expected a number', 'found "a day"'],
  ],
  [['--at', '25'], ['--at: expected a number from 0 to 24 hours, found "25"']],
  [['--at', ''], ['--at: expected a number']],
])('%j is refused in one line', (args, words) => {
  const { code, out, errors } = run('heat', [good, ...args]);
  expect({ code, out, count: errors.length }).toEqual({ code: 2, out: '', count: 1 });
  for (const word of words) expect(errors[0]).toContain(word);
});

test.each([{ args: [] }, { args: [good, good] }, { args: ['--fial', 'x', good] }])(
  'no file, two files or an unknown option: how to use the command ($args.length words)',
  ({ args }) => {
    const { code, errors } = run('heat', args);
    expect({ code, count: errors.length }).toEqual({ code: 2, count: 1 });
    expect(errors[0]).toMatch(/^usage: npm run --silent heat -- FILE/);
  },
);

test('bad input is one line and the exit code 2', () => {
  const { code, out, errors } = run('heat', [file('bad.json', '{')]);
  expect({ code, out, count: errors.length }).toEqual({ code: 2, out: '', count: 1 });
});
