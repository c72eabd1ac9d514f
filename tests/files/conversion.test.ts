import { expect, test } from 'vitest';
import { openLibrary } from '../../src/cli/library.ts';
import { wireKey } from '../../src/engine/model/wiring.ts';
import { partsGone, startWiring } from '../../src/files/conversion.ts';
import type { Before } from '../../src/files/job.ts';
import { must } from '../engine/support/must.ts';

const library = openLibrary();
const system = (id: string) => library.system(id, { file: 'conversion.test.ts', place: 'system' });
const old = system('three-port');
const before: Before = {
  system: 'three-port',
  reference: 'call-on-the-switched-line',
  renames: {},
  says: 'It is gone.',
};
const start = (from: Partial<Before>, now: string) =>
  startWiring({ ...before, ...from }, old, system(now).system, 'a.yaml');
const right = must(old.references.find(({ id }) => id === before.reference)).wires;

test('where every old part stays, so does every old wire', () => {
  expect(start({}, 'unvented-three-port')).toEqual({ wires: right, gone: [] });
});

test('the wires of a part that left leave with it, and its leads are named', () => {
  const { wires, gone } = start({}, 'two-two-ports');
  expect(wires).toEqual(right.filter((wire) => !wire.some((end) => end.startsWith('three-port/'))));
  // The five cores of a mid-position valve (common practice).
  expect(gone.map((lead) => lead.slice('three-port/'.length)).sort()).toEqual(
    ['blue', 'earth', 'grey', 'orange', 'white'].sort(),
  );
  expect(partsGone(old.system, gone)).toEqual([
    expect.stringMatching(/^three-port valve \((\w+, ){4}\w+\)$/),
  ]);
});

test('a part that stays under another name keeps the wires on the terminals that it still has', () => {
  const { wires, gone } = start({ renames: { 'three-port': 'water-valve' } }, 'two-two-ports');
  const keys = wires.map(wireKey);
  for (const core of ['grey', 'orange', 'blue', 'earth'])
    expect(keys.some((key) => key.includes(`water-valve/${core}`))).toBe(true);
  // A two-port has a brown core where the three-port has a white one (common practice).
  expect(gone).toEqual(['three-port/white']);
});

test('old wires may be given one by one', () => {
  const wires = [['spur/L', 'strip/1'] as const];
  const { reference: _, ...own } = before;
  expect(startWiring({ ...own, wires }, old, system('two-two-ports').system, 'a.yaml')).toEqual({
    wires,
    gone: [],
  });
  const unknown = [['spur/M', 'strip/1'] as const];
  expect(() =>
    startWiring({ ...own, wires: unknown }, old, system('two-two-ports').system, 'a.yaml'),
  ).toThrow('a.yaml: from.wires[0][0]: expected a terminal of spur: one of L, N, E, found "spur/M"');
});

test.each([
  [{ reference: 'call-on-switched-line' }, 'from.reference: expected one of call-on-the-switched-line'],
  [{ renames: { 'three-prot': 'water-valve' } }, 'did you mean "three-port"?), found "three-prot"'],
  [{ renames: { 'three-port': 'watervalve' } }, 'did you mean "water-valve"?), found "watervalve"'],
])('a name that a system does not know is refused with its place: %o', (from, message) => {
  expect(() => start(from, 'two-two-ports')).toThrow(message);
});
