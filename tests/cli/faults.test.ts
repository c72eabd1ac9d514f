import { describe, expect, test } from 'vitest';
import { hazards } from '../../src/engine/faults/hazards/index.ts';
import { applyMistake } from '../../src/files/mistake.ts';
import { attempt, file, right, run, wirings } from './run.ts';

const good = file('right.json', attempt(right));
const bypassed = wirings.mistakes.find(({ id }) => id === 'motor-fed-before-thermostat');
const dangerous = file('dangerous.json', attempt(bypassed && applyMistake(wirings.references, bypassed)));
const heat = ['--hazard', 'uncontrolled-heat'];
const usage = 'usage: npm run --silent faults -- FILE [--hazard ID] [--most 1|2|3] [--json]';

describe('the command "faults"', { timeout: 60_000 }, () => {
  test('one hazard in words: sets by size, and what stands beyond the wiring', () => {
    const { code, lines, errors } = run('faults', [good, ...heat]);
    expect({ code, errors }).toEqual({ code: 0, errors: [] });
    expect(lines[0]).toBe('Uncontrolled heat into the cylinder');
    const one = lines.indexOf('One failure alone (2 ways):');
    const two = lines.indexOf('Two failures together (7 ways):');
    expect(one).toBeGreaterThan(0);
    expect(two).toBe(one + 3);
    expect(lines.slice(one + 1, two)).toContain('  The two-port valve is stuck open.');
    expect(lines.slice(two + 1)).toContain(
      '  The cylinder thermostat is welded on its call and the cut-out fails to trip.',
    );
    expect(lines.at(-1)).toMatch(/relief valve/);
  });

  test('every hazard as a line of JSON, with exactly these keys, and the ids that the text puts in words', () => {
    const { code, lines } = run('faults', ['--json', good]);
    expect(code).toBe(0);
    const found = lines.map((line) => JSON.parse(line));
    expect(found.map(({ hazard }) => hazard)).toEqual(hazards.map(({ id }) => id));
    for (const one of found) {
      expect(Object.keys(one)).toEqual(['job', 'hazard', 'sets']);
      expect(one.job).toBe('unvented-three-port');
      for (const set of one.sets) {
        expect(Object.keys(set)).toEqual(['failures', 'says', 'inputs', 'positions']);
        expect(Object.keys(set.inputs)).toEqual(Object.keys(wirings.spec.inputs));
        expect(Object.keys(set.positions)).toEqual(['three-port', 'two-port']);
        expect(set.says.length).toBe(set.failures.length);
      }
    }
    const [{ sets }] = found;
    expect(sets[0]).toMatchObject({
      failures: ['two-port: stuck open'],
      says: ['the two-port valve is stuck open'],
      inputs: { cylinder: 'satisfied', 'cut-out': 'tripped' },
      positions: { 'two-port': 'open' },
    });
  });

  test('more failures at once are looked for when asked, and fewer', () => {
    const sizes = (most: string) => {
      const { out } = run('faults', [good, ...heat, '--most', most, '--json']);
      const sets: { failures: string[] }[] = JSON.parse(out).sets;
      return new Set(sets.map(({ failures }) => failures.length));
    };
    expect(sizes('1')).toEqual(new Set([1]));
    expect(sizes('3')).toEqual(new Set([1, 2, 3]));
  });

  test('a hazard that no failure of this size lets through is said to have none', () => {
    const { lines } = run('faults', [good, '--hazard', 'live-case', '--most', '1']);
    expect(lines).toContain('One failure alone: none.');
  });

  test('a wiring that lets a hazard through with nothing failed: it says so, with the exit code 1', () => {
    const { code, out } = run('faults', [dangerous, ...heat]);
    expect(code).toBe(1);
    expect(out).toContain('It is there with nothing failed');
    expect(out).not.toContain('One failure');
    const json = run('faults', [dangerous, ...heat, '--json']);
    expect(json.code).toBe(1);
    expect(JSON.parse(json.out).sets).toMatchObject([{ failures: [], says: [] }]);
  });

  test('no file, two files, an unknown option or a wrong number: how to use the command', () => {
    for (const args of [[], [good, good], [good, '--josn'], [good, '--most', '4'], [good, '--most', '2x']]) {
      const { code, out, errors } = run('faults', args);
      expect({ code, out, errors }).toEqual({ code: 2, out: '', errors: [usage] });
    }
  });

  test('a hazard nobody knows is named, and the likely one offered', () => {
    const { code, errors } = run('faults', [good, '--hazard', 'uncontroled-heat']);
    expect(code).toBe(2);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatch(/^--hazard: expected .*did you mean "uncontrolled-heat"\?/);
  });

  test('bad input is one line and the exit code 2', () => {
    for (const name of [
      file('bad.json', '{'),
      file('job.json', attempt(right, 'nowhere')),
      'not-there.json',
    ]) {
      const { code, out, errors } = run('faults', [name]);
      expect({ code, out, count: errors.length }).toEqual({ code: 2, out: '', count: 1 });
    }
  });
});
