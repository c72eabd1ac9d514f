import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import Papa from 'papaparse';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sure } from '../../src/course/marks/sure.ts';
import { writeCoursework } from '../../src/files/coursework.ts';
import { writeResult } from '../../src/files/result.ts';
import { codeOf, demoClass, demoCoursework, makeSolver } from '../course/marks/demo-class.ts';
import { folderSource } from '../course/marks/support.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'mark-'));
const path = (name: string) => join(folder, name);
const coursework = { ...demoCoursework, tasks: demoCoursework.tasks.filter(({ kind }) => kind === 'job') };

beforeAll(() => {
  const results = demoClass(coursework, makeSolver(coursework, folderSource()), { learners: 6, goes: 5 });
  const text = (k: number) => writeResult(sure(results[k]), sure(results[k]).made);
  mkdirSync(path('class/group b'), { recursive: true });
  writeFileSync(path('class/one.json'), text(0));
  writeFileSync(path('class/group b/one.json'), text(1));
  writeFileSync(path('two.json'), text(2));
  writeFileSync(
    path('more.zip'),
    zipSync({ 'x/a.json': strToU8(text(3)), 'x/b.json': strToU8(text(4)), 'x/c.json': strToU8(text(5)) }),
  );
  writeFileSync(path('note.txt'), 'see you on Monday');
  writeFileSync(path('week.yaml'), writeCoursework(coursework));
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const rowsOf = (lines: readonly string[]) =>
  lines.filter((line) => /^AB-\d/.test(line) && !line.includes(':'));

test('files, folders and zips together: a row for each learner, by code, and the exit code 0', () => {
  const { code, lines, errors } = run('mark', [
    path('week.yaml'),
    path('class'),
    path('two.json'),
    path('more.zip'),
  ]);
  expect({ code, errors }).toEqual({ code: 0, errors: [] });
  expect(rowsOf(lines).map((line) => line.split(/\s+/)[0])).toEqual([0, 1, 2, 3, 4, 5].map(codeOf));
  expect(lines.join('\n')).toContain('Marked by “Workshop week” as given; 0 of 6 results');
  expect(lines.join('\n')).toMatch(/^6 learners, \d passed\.$/m);
});

test('what is no result is named on standard error, the rest is marked, and the exit code is 1', () => {
  const { code, lines, errors } = run('mark', [
    path('week.yaml'),
    path('note.txt'),
    path('two.json'),
    path('gone.json'),
  ]);
  expect(code).toBe(1);
  expect(errors).toEqual([
    'gone.json: expected a file or a folder, found no such file',
    'note.txt: expected a result file, as the coursework page saves it, found another kind of file',
  ]);
  expect(rowsOf(lines)).toHaveLength(1);
});

test('--csv and --goes write tables that can be read back', () => {
  const [csv, goes] = [path('marks.csv'), path('goes.csv')];
  const { code } = run('mark', [path('week.yaml'), path('more.zip'), '--csv', csv, '--goes', goes]);
  expect(code).toBe(0);
  const read = (file: string) =>
    Papa.parse<Record<string, string>>(readFileSync(file, 'utf8').replace(/^\ufeff/, ''), {
      header: true,
      skipEmptyLines: true,
    }).data;
  expect(read(csv).map(({ Code }) => Code)).toEqual([3, 4, 5].map(codeOf));
  expect(read(goes)).toHaveLength(15);
  expect(new Set(read(goes).map(({ Right }) => Right))).toEqual(new Set(['yes', 'no']));
});

test('without a coursework the one of the results is taken, and that is said', () => {
  const { code, lines } = run('mark', [path('two.json')]);
  expect(code).toBe(0);
  expect(lines.join('\n')).toContain('No coursework was given: marked by the one that most results carry');
});

test('nothing to mark, no arguments, a coursework that is none: one line and the exit code 2', () => {
  const usage = /^usage: npm run --silent mark -- /;
  for (const args of [['--csv', path('two.json')], [path('week.yaml')]]) {
    const { code, out, errors } = run('mark', args);
    expect({ code, out, count: errors.length }).toEqual({ code: 2, out: '', count: 1 });
    expect(errors[0]).toMatch(usage);
  }
  const none = run('mark', [path('note.txt')]);
  expect(none.code).toBe(2);
  expect(none.errors.at(-1)).toMatch(/expected at least one result file that can be read, found none$/);
  writeFileSync(path('bad.yaml'), 'id: [');
  const bad = run('mark', [path('bad.yaml'), path('two.json')]);
  expect(bad.code).toBe(2);
  expect(bad.errors[0]).toContain('bad.yaml');
});
