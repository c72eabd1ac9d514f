import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { checkContent } from '../../src/cli/content-check.ts';
import { openLibrary } from '../../src/cli/library.ts';
import { root, run, scratch } from './run.ts';

const SYSTEM = 'systems/unvented-three-port.yaml';
const WHOLE = 'jobs/unvented-three-port.yaml';
const SHORTER = 'jobs/unvented-three-port-switching.yaml';
let copies = 0;

/** What the check says of one system of the course and its first two jobs, with one file changed. */
function troublesAfter(name: string, change: (text: string) => string, saveAs = name): string[] {
  const folder = join(scratch, `content-${copies++}`);
  mkdirSync(folder);
  for (const file of [SYSTEM, WHOLE, SHORTER]) cpSync(join(root, 'content', file), join(folder, file));
  const text = readFileSync(join(folder, name), 'utf8');
  const changed = change(text);
  expect(saveAs !== name || changed !== text).toBe(true);
  writeFileSync(join(folder, saveAs), changed);
  return checkContent(openLibrary(pathToFileURL(`${folder}/`))).troubles.map(({ message }) => message);
}

/** A mistake as YAML, at the end of the system's file. */
const withMistake = (id: string, lines: string) => (text: string) =>
  `${text.trimEnd()}\n  - { id: ${id}, title: T, says: S, from: cut-out-after-thermostat, ${lines} }\n`;

test('the content of the course is sound', () => {
  const { code, lines, errors } = run('check', []);
  expect(errors).toEqual([]);
  expect(code).toBe(0);
  expect(lines.at(-1)).toMatch(
    /^content: \d+ systems?, \d+ references, \d+ mistakes, \d+ jobs, \d+ lessons, \d+ claims, \d+ callouts, \d+ double faults, \d+ courseworks, \d+ stage scripts; all sound$/,
  );
}, 180_000);

test('a system that nothing is said about fails the check', () => {
  const silent = (text: string) => text.replace(/^about:\n(?: .*\n|\n)+/m, '');
  expect(troublesAfter(SYSTEM, silent)[0]).toMatch(
    /about: expected what the reference pages say of it, found nothing/,
  );
});

test('what a regulation says without its edition fails the check', () => {
  const undated = (text: string) => text.replace(/(source: Approved Document L), .*/, '$1');
  expect(troublesAfter(SYSTEM, undated)[0]).toMatch(
    /about\.regulations\[\d\]\.source: expected a document with the year of its edition/,
  );
});

test('a reference that is rejected fails the check', () => {
  const [first] = troublesAfter(SYSTEM, (text) => text.replace('pump/E, ', ''));
  expect(first).toMatch(/references\[0\]: expected cut-out-after-thermostat to be accepted, found .*earthed/);
});

test('a mistake that is accepted fails the check, once for the rule it names and once for doing no harm', () => {
  const spare = withMistake('spare', 'land: [[spur/L, strip/1], [strip/9, strip/8]], breaks: [earthed]');
  const [landedTwice] = troublesAfter(SYSTEM, spare);
  expect(landedTwice).toMatch(/land\[0\]: expected a wire that is not there yet/);
  const [named] = troublesAfter(
    SYSTEM,
    withMistake('spare', 'land: [[strip/9, strip/8]], breaks: [earthed]'),
  );
  expect(named).toMatch(/breaks: expected that spare breaks earthed, found nothing/);
  const [harmless] = troublesAfter(SYSTEM, withMistake('spare', 'land: [[strip/9, strip/8]], breaks: []'));
  expect(harmless).toMatch(/breaks: expected spare to break a rule or earn advice, found neither/);
});

test('a mistake that breaks a rule it does not name fails the check', () => {
  const [first] = troublesAfter(
    SYSTEM,
    withMistake('bare', 'lift: [[pump/E, strip/12], [pump/N, strip/10]], breaks: [earthed]'),
  );
  expect(first).toMatch(/breaks: expected that bare breaks earthed, found .*earthed.*neutral-direct/);
});

test('advice that a mistake does not name, or names in vain, fails the check', () => {
  const lifted = 'lift: [[room-stat/N, strip/11], [pump/E, strip/12]], breaks: [earthed]';
  expect(troublesAfter(SYSTEM, withMistake('bare', `${lifted}, advises: [accelerator-neutral]`))).toEqual([]);
  expect(troublesAfter(SYSTEM, withMistake('bare', lifted))[0]).toMatch(
    /advises: .* found accelerator-neutral/,
  );
  const vain =
    'lift: [[pump/E, strip/12], [two-port/earth, strip/12]], breaks: [earthed], advises: [crowded-terminal]';
  expect(troublesAfter(SYSTEM, withMistake('bare', vain))[0]).toMatch(
    /advises crowded-terminal, found nothing/,
  );
});

test('two wirings that are the same circuit fail the check', () => {
  const copy = 'lift: [[pump/E, strip/12], [two-port/earth, strip/12]], breaks: [earthed]';
  const twice = (text: string) => withMistake('again', copy)(withMistake('bare', copy)(text));
  expect(troublesAfter(SYSTEM, twice)[0]).toMatch(
    /expected a circuit of its own, found the same wires as bare/,
  );
});

test('a locked wire that no right wiring has fails the check; one to be questioned does not', () => {
  const astray = (text: string) => text.replace('strip/1: [spur/L', 'strip/9: [spur/L');
  expect(troublesAfter(SHORTER, astray)[0]).toMatch(/gives\.wires: expected only wires of one reference/);
  expect(troublesAfter(SHORTER, (text) => astray(text).replace('locked: true', 'locked: false'))).toEqual([]);
});

test('a given wire to a terminal that does not exist fails the check', () => {
  expect(troublesAfter(SHORTER, (text) => text.replace('pump/E', 'pump/EE'))[0]).toMatch(
    /gives\.wires.*of pump/,
  );
});

// Approved Document G, England, 2015 edition with 2016 amendments, 3.17 and 3.18: every rule is tried in
// tests/engine/rules/stores.test.ts.
test('an unvented store without its safety devices fails the check, with the rule and its source', () => {
  const [first, ...more] = troublesAfter(SYSTEM, (text) =>
    text.replace('relief: [temperature and pressure, expansion]', 'relief: [expansion]'),
  );
  expect(first).toMatch(/stores: expected two-safety-devices .*3\.17 and 3\.18.*found that heat from coil/);
  expect(more).toEqual([]);
});

test('a file whose name is not its id fails the check, and so does a job for a system nobody wrote', () => {
  const copied = troublesAfter(SHORTER, (text) => text, 'jobs/another.yaml');
  expect(copied[0]).toMatch(/another\.yaml: id: expected another, as the file is called/);
  const [homeless] = troublesAfter(SHORTER, (text) => text.replace('system: unvented', 'system: vented'));
  expect(homeless).toMatch(/switching\.yaml: system: expected one of .*did you mean "unvented-three-port"/);
});

test('a file that cannot be read as YAML is one trouble, and the others are checked all the same', () => {
  const troubles = troublesAfter(SHORTER, (text) => `${text}\n}`);
  expect(troubles).toHaveLength(1);
  expect(troubles[0]).toMatch(/switching\.yaml: line \d+, column 1: expected YAML/);
});

test('a conversion whose old wiring is right already fails the check, and so does one from an old wiring nobody wrote', () => {
  const from = (reference: string) => (text: string) =>
    text.replace(
      /^gives:[\s\S]*/m,
      `from: { system: unvented-three-port, reference: ${reference}, says: S }\n`,
    );
  expect(troublesAfter(SHORTER, from('cut-out-after-thermostat'))).toEqual([
    expect.stringMatching(/from: expected an old wiring that must be changed, found one that is accepted/),
    expect.stringMatching(/from: expected an old wiring that must be changed, found the circuit of a ref/),
  ]);
  expect(troublesAfter(SHORTER, from('cut-out-after-thermostats'))[0]).toMatch(
    /from\.reference: expected one of .*did you mean "cut-out-after-thermostat"/,
  );
});
