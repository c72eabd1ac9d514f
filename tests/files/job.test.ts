import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseJob } from '../../src/files/job.ts';

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
