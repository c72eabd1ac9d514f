import { describe, expect, test } from 'vitest';
import { checkCourseworks, checkNames } from '../../src/cli/coursework-check.ts';
import { openLibrary } from '../../src/cli/library.ts';
import { checkOwn } from '../../src/cli/own-check.ts';
import { forCourseworks, openSite, pathsIn } from '../../src/cli/site-check.ts';
import { withLine } from '../../src/files/yaml-line.ts';
import { file, root, run } from './run.ts';

const site = openSite(root, openLibrary());
const content = (path: string) => {
  const slash = path.lastIndexOf('/');
  const found = pathsIn(path.slice(0, slash), root).find(({ name }) => name === path);
  if (!found) throw new Error(path);
  return found;
};
/** What the check says of a file of the course with something changed, line and all. */
function said(path: string, from: string | RegExp, to: string): string[] {
  const { text } = content(path);
  const changed = text.replace(from, to);
  expect(changed).not.toBe(text);
  return checkOwn({ name: 'own.yaml', text: changed }, site).troubles.map(
    (trouble) => withLine(trouble, changed).message,
  );
}

describe('courseworks of the site', () => {
  const all = pathsIn('content/coursework', root);

  test('are sound', () => {
    expect(all).toHaveLength(3);
    expect(checkCourseworks(forCourseworks(site, all))).toEqual([]);
    expect(checkNames(all)).toEqual([]);
  });

  test('are called as their files are', () => {
    const [first] = all;
    const moved = [{ name: 'content/coursework/moon.yaml', text: first?.text ?? '' }];
    expect(checkNames(moved).map(({ message }) => message)).toEqual([
      'content/coursework/moon.yaml: id: expected moon, as the file is called, found "controls-basics"',
    ]);
  });

  test('whose questions nobody can ask are told', () => {
    const messages = said(
      'content/coursework/unvented-week.yaml',
      'sum: discharge-pipe-size',
      'sum: discharge-pipe',
    );
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(/^own\.yaml:\d+: tasks\[3\]: expected a task that gives questions, found /);
  });

  test('that ask for more than a lesson has are told', () => {
    const lesson = 'id: contacts, kind: lesson';
    expect(said('content/coursework/controls-basics.yaml', lesson, `pass: 9, ${lesson}`)[0]).toMatch(
      /^own\.yaml:\d+: tasks\[0\]\.pass: expected at most \d: the task has no more, found 9$/,
    );
  });
});

describe('a tutor’s own file', () => {
  test.each([
    ['content/jobs/three-port.yaml', 'job'],
    ['content/coursework/fault-finding.yaml', 'coursework'],
    ['content/callouts/warm-towels-in-july.yaml', 'callout'],
    ['content/quizzes/bands.yaml', 'quiz'],
    ['content/stage/boiler-interlock.yaml', 'stage script'],
  ])('%s is taken for a %s, and is sound', (path, kind) => {
    expect(checkOwn(content(path), site)).toEqual({ kind, troubles: [] });
  });

  test.each<[string, string, string | RegExp, string, RegExp]>([
    [
      'a job on a system that is not there',
      'content/jobs/unvented-three-port-switching.yaml',
      'system: unvented-three-port',
      'system: unvented-tree-port',
      /^own\.yaml:2: system: expected one of .*found "unvented-tree-port"$/,
    ],
    [
      'a job with a terminal that is not there',
      'content/jobs/unvented-three-port-switching.yaml',
      'spur/L',
      'spur/LL',
      /^own\.yaml:\d+: gives\.wires\["strip\/1"\]\[0\]: expected a terminal of spur: one of .*found "spur\/LL"$/,
    ],
    [
      'a misspelt key',
      'content/jobs/three-port.yaml',
      'summary:',
      'sumary:',
      /^own\.yaml:10: top level: expected one of .*did you mean "summary".*found "sumary"$/,
    ],
    [
      'a coursework with a lesson that is not there',
      'content/coursework/controls-basics.yaml',
      'lesson: core-colours',
      'lesson: core-colour',
      /^own\.yaml:11: tasks\[1\]\.lesson: expected one of .*did you mean "core-colours".*found "core-colour"$/,
    ],
    [
      'a callout of another level',
      'content/callouts/warm-towels-in-july.yaml',
      'level: 1',
      'level: 3',
      /^own\.yaml:\d+: level: expected 1, for .*found 3$/,
    ],
    [
      'YAML that breaks',
      'content/jobs/three-port.yaml',
      'title: ',
      'title: [',
      /^own\.yaml:\d+: column \d+: expected YAML/,
    ],
  ])('%s is told with its line', (_, path, from, to, says) => {
    const [first] = said(path, from, to);
    expect(first).toMatch(says);
  });

  test('of no kind says by which keys the kinds are told', () => {
    const { kind, troubles } = checkOwn({ name: 'own.yaml', text: 'colour: green\n' }, site);
    expect(kind).toBeUndefined();
    expect(troubles[0]?.message).toBe(
      'own.yaml: top level: expected one of the keys brief (a job), steps (a stage script), tasks (a coursework), customer (a callout), source (a quiz), found colour',
    );
    for (const text of ['', '- a list', '7', '"text"'])
      expect(checkOwn({ name: 'own.yaml', text }, site).troubles).toHaveLength(1);
  });
});

test('the command checks just the files it is given, names each, and ends with 1 when one does not fit', () => {
  const bad = file(
    'bad.yaml',
    content('content/jobs/three-port.yaml').text.replace('system: three-port', 'system: moon'),
  );
  const good = file('good.yaml', content('content/jobs/three-port.yaml').text);
  const { code, lines, errors } = run('check', [good, bad, 'nowhere.yaml']);
  expect(lines).toEqual([`${good}: a job; all sound`, `${bad}: a job; 1 trouble`]);
  expect(errors[0]).toMatch(/bad\.yaml:2: system: expected one of/);
  expect(errors[1]).toBe('nowhere.yaml: expected a file, found no such file');
  expect(code).toBe(1);
  expect(run('check', [good]).code).toBe(0);
}, 60_000);
