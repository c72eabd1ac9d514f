import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { kindOf, parseJob } from '../../src/files/job.ts';

const folder = new URL('../../content/jobs/', import.meta.url);
const read = (name: string) => parseJob(readFileSync(new URL(name, folder), 'utf8'), name);

test('the flagship job comes bare', () => {
  expect(read('unvented-three-port.yaml')).toMatchObject({ system: 'unvented-three-port' });
  expect(read('unvented-three-port.yaml').gives).toBeUndefined();
});

// Six to a terminal of the strip: common practice, the same limit that the engine's advice has.
test('what a job gives crowds no terminal: six wires at most', () => {
  const given = readdirSync(folder).flatMap((name) => read(name).gives ?? []);
  expect(given.length).toBeGreaterThan(0);
  for (const { wires } of given) {
    const count = new Map<string, number>();
    for (const end of wires.flat()) count.set(end, (count.get(end) ?? 0) + 1);
    expect(Math.max(...count.values())).toBeLessThanOrEqual(6);
  }
});

test('a job without a brief, or with a key nobody knows, is refused', () => {
  const job = 'id: a\nsystem: b\ntitle: c\nsummary: d\n';
  expect(() => parseJob(job, 'a.yaml')).toThrow(
    'a.yaml: brief: expected the brief: what the learner is told, found nothing',
  );
  expect(() => parseJob(`${job}breif: e\n`, 'a.yaml')).toThrow('did you mean "brief"?), found "breif"');
});

test('wires that a job gives must say whether they are locked', () => {
  const job = 'id: a\nsystem: b\ntitle: c\nbrief: e\nsummary: d\ngives: { wires: { strip/1: [spur/L] } }\n';
  expect(() => parseJob(job, 'a.yaml')).toThrow(
    'a.yaml: gives.locked: expected true (sound and fixed) or false',
  );
});

const conversion = (from: string) =>
  `id: a\nsystem: b\ntitle: c\nbrief: e\nsummary: d\nfrom: { system: old, says: f${from} }\n`;

test('a conversion names the old system, and its wiring by reference or wire by wire', () => {
  const { from } = parseJob(conversion(', reference: right, renames: { valve: water-valve }'), 'a.yaml');
  expect(from).toEqual({ system: 'old', reference: 'right', renames: { valve: 'water-valve' }, says: 'f' });
  expect(parseJob(conversion(', wires: { strip/1: [spur/L] }'), 'a.yaml').from).toEqual({
    system: 'old',
    wires: [['spur/L', 'strip/1']],
    renames: {},
    says: 'f',
  });
});

test('a conversion with two old wirings, with none, or with given wires besides is refused', () => {
  expect(() => parseJob(conversion(''), 'a.yaml')).toThrow(
    'a.yaml: from: expected either reference or wires, found neither',
  );
  expect(() => parseJob(conversion(', reference: right, wires: {}'), 'a.yaml')).toThrow(
    'a.yaml: from: expected either reference or wires, found both',
  );
  expect(() =>
    parseJob(`${conversion(', reference: right')}gives: { locked: true, wires: {} }\n`, 'a.yaml'),
  ).toThrow('a.yaml: gives: expected either gives or from, found both');
  expect(() => parseJob(conversion(', refrence: right'), 'a.yaml')).toThrow(
    'a.yaml: from: expected one of system, reference, wires, renames, says (did you mean "reference"?)',
  );
});

test('what a job asks for is told from what it starts with', () => {
  const wires = [['spur/L', 'strip/1']] as const;
  expect(kindOf({})).toBe('bare');
  expect(kindOf({ gives: { locked: true, wires: [] } })).toBe('bare');
  expect(kindOf({ gives: { locked: true, wires } })).toBe('complete');
  expect(kindOf({ gives: { locked: false, wires } })).toBe('put-right');
  expect(kindOf({ from: { system: 'old', reference: 'right', renames: {}, says: 'f' } })).toBe('convert');
});
