import { expect, test } from 'vitest';
import { attempt, file, right, run, wirings, wrong } from './run.ts';

const accepted = attempt(right);
const rejected = attempt(right.slice(1));

test('a right wiring is accepted, with the exit code 0 and the states that were judged', () => {
  const { code, lines, errors } = run('grade', [file('right.json', accepted)]);
  expect({ code, errors, count: lines.length }).toEqual({ code: 0, errors: [], count: 1 });
  expect(JSON.parse(lines[0] ?? '')).toEqual({
    job: 'unvented-three-port',
    accepted: true,
    states: expect.any(Number),
    findings: [],
  });
});

test('a wrong wiring is rejected, with the exit code 1 and exactly the keys of the contract', () => {
  const { code, lines, errors } = run('grade', ['-'], rejected);
  expect({ code, errors }).toEqual({ code: 1, errors: [] });
  const verdict = JSON.parse(lines[0] ?? '');
  expect(Object.keys(verdict)).toEqual(['job', 'accepted', 'states', 'findings']);
  expect(verdict.accepted).toBe(false);
  for (const finding of verdict.findings) {
    expect(Object.keys(finding)).toEqual(['rule', 'severity', 'says', 'inputs', 'steps', 'terminals']);
    expect(Object.keys(finding.inputs)).toEqual(Object.keys(wirings.spec.inputs));
    expect(Array.isArray(finding.steps) && Array.isArray(finding.terminals)).toBe(true);
  }
});

test('the steps of a finding, taken from cold, lead to its settings', () => {
  const cold = {
    supply: 'off',
    'hot-water': 'off',
    heating: 'off',
    room: 'satisfied',
    cylinder: 'satisfied',
  };
  const { lines } = run('grade', ['-'], wrong.map((wires) => `${attempt(wires)}\n`).join(''));
  const findings = lines.flatMap((line) => JSON.parse(line).findings);
  expect(findings.length).toBeGreaterThan(wrong.length / 2);
  for (const { inputs, steps } of findings)
    expect(Object.assign({ ...cold, 'cut-out': 'healthy' }, ...steps)).toEqual(inputs);
});

test('verdicts come in the order of the files, standard input among them', () => {
  const good = file('first.json', accepted);
  const { code, lines } = run('grade', [good, '-', good], `${rejected}\n${accepted}`);
  expect(lines.map((line) => JSON.parse(line).accepted)).toEqual([true, false, true, true]);
  expect(code).toBe(1);
});

test('bad input is named, the rest is graded all the same, and the exit code is 2', () => {
  const { code, lines, errors } = run('grade', ['-'], `${accepted}\nnonsense\n${rejected}\n`);
  expect(lines.map((line) => JSON.parse(line).accepted)).toEqual([true, false]);
  expect(errors).toEqual(['standard input, line 2: column 1: expected a value, found "nonsense"']);
  expect(code).toBe(2);
});

test('a file may carry a byte order mark, new lines, and keys of a college of its own', () => {
  const pretty = JSON.stringify(
    { job: 'unvented-three-port', wires: right, pupil: 7, at: { desk: [1] } },
    null,
    2,
  );
  expect(run('grade', [file('bom.json', `\ufeff${pretty.replaceAll('\n', '\r\n')}`)]).code).toBe(0);
});

test('a verdict does not depend on the order of the wires, their ends, or a wire told twice', () => {
  let seed = 20;
  const chance = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const again = wrong.map((wires) => {
    const mixed = wires.map((wire) => ({ wire, key: chance() })).sort((a, b) => a.key - b.key);
    const turned = mixed.map(({ wire: [a, b] }) => (chance() < 0.5 ? [a, b] : [b, a]));
    return [...turned, ...turned.slice(0, 3), ...wires.slice(0, 2)];
  });
  const lines = (all: readonly unknown[]) => all.map((wires) => `${attempt(wires)}\n`).join('');
  const plain = run('grade', ['-'], lines(wrong));
  expect(plain.lines.length).toBe(wrong.length);
  expect(run('grade', ['-'], lines(again)).out).toBe(plain.out);
});

test('thousands of attempts stream through, a verdict each', () => {
  const { code, lines } = run('grade', ['-'], `${accepted}\n${rejected}\n`.repeat(1500));
  expect(lines.length).toBe(3000);
  expect(new Set(lines).size).toBe(2);
  expect(code).toBe(1);
});
