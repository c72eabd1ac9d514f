import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openLibrary } from '../../../src/cli/library.ts';
import {
  changeMade,
  isSameCircuit,
  nearestChange,
  sizeOf,
  smallestChange,
} from '../../../src/engine/grade/change.ts';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { PartKind } from '../../../src/engine/model/part.ts';
import type { System } from '../../../src/engine/model/system.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { landed, references, system as unvented } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { everyWiring, fewest } from './every-wiring.ts';

const library = openLibrary();
const asker = { file: 'change.test.ts', place: 'system' };
const oldWires = must(library.system('three-port', asker).references[0]).wires;
const keys = (wires: readonly Wire[]) => wires.map(wireKey).sort();

/** A supply's three leads, single leads beside them, and strips of so many ways. */
function small(leads: number, strips: readonly number[]): System {
  const lead: PartKind = {
    kind: 'lead',
    title: 'A lead',
    terminals: [{ id: 'a', core: 'brown', duty: 'switched', does: 'Stands for any lead.' }],
  };
  const single = Array.from({ length: leads }, (_, k) => [`lead-${k + 1}`, { kind: 'lead', name: 'Lead' }]);
  const strip = strips.map((ways, k) => [
    k === 0 ? 'strip' : `strip-${k + 1}`,
    { kind: 'strip', name: 'Strip', options: { ways } },
  ]);
  const spec = {
    id: 'small',
    title: 'Small',
    parts: { spur: { kind: 'fused-spur', name: 'Spur' }, ...Object.fromEntries([...single, ...strip]) },
    inputs: { supply: { label: 'Supply' } },
    pipes: [],
    demands: [],
  };
  return buildSystem(spec, (kind, options) => (kind === 'lead' ? lead : findKind(kind, options)));
}

describe('worked by hand', () => {
  const system = small(2, [4]);
  const change = (from: Record<string, string[]>, to: Record<string, string[]>) =>
    smallestChange(system, landed(from), landed(to));

  test('the same circuit on other strip numbers changes nothing', () => {
    const from = { 'strip/1': ['spur/L', 'lead-1/a'], 'strip/2': ['spur/N', 'lead-2/a'] };
    const to = { 'strip/4': ['spur/L', 'lead-1/a'], 'strip/1': ['lead-2/a', 'spur/N'] };
    expect(change(from, to)).toEqual({ lift: [], land: [], stays: landed(from) });
  });

  test('a lead that changes company is lifted once and landed once', () => {
    const from = { 'strip/1': ['spur/L', 'lead-1/a'], 'strip/2': ['spur/N', 'lead-2/a', 'spur/E'] };
    const to = { 'strip/1': ['spur/L', 'lead-1/a', 'spur/E'], 'strip/2': ['spur/N', 'lead-2/a'] };
    const { lift, land } = change(from, to);
    expect(keys(lift)).toEqual(keys([['spur/E', 'strip/2']]));
    expect(keys(land)).toEqual(keys([['spur/E', 'strip/1']]));
  });

  test('two terminals that belong together are linked rather than emptied', () => {
    const from = { 'strip/1': ['spur/L', 'lead-1/a'], 'strip/2': ['spur/N', 'lead-2/a'] };
    const to = { 'strip/1': ['spur/L', 'lead-1/a', 'spur/N', 'lead-2/a'] };
    const { lift, land } = change(from, to);
    expect(lift).toEqual([]);
    expect(keys(land)).toEqual(keys([['strip/1', 'strip/2']]));
  });

  test('leads that are new to the strip get a terminal that is free', () => {
    const from = { 'strip/1': ['spur/L', 'lead-1/a'] };
    const to = { 'strip/2': ['spur/L', 'lead-1/a'], 'strip/1': ['spur/N', 'lead-2/a'] };
    const { lift, land } = change(from, to);
    expect(lift).toEqual([]);
    const joints = new Set(land.flat().filter((end) => end.startsWith('strip/')));
    expect(joints.size).toBe(1);
    expect(joints.has('strip/1')).toBe(false);
    expect(land.length).toBe(2);
  });

  test('leads that are joined without a terminal are joined so here too', () => {
    const { lift, land } = change({}, { 'spur/L': ['lead-1/a'], 'lead-1/a': ['lead-2/a'] });
    expect(lift).toEqual([]);
    expect(keys(land)).toEqual(
      keys([
        ['spur/L', 'lead-1/a'],
        ['lead-1/a', 'lead-2/a'],
      ]),
    );
  });

  test('a lead nobody needs may stay alone in its terminal, so one of two is lifted', () => {
    const { lift, land } = change({ 'strip/1': ['spur/L', 'lead-1/a'] }, {});
    expect(lift.length).toBe(1);
    expect(land).toEqual([]);
  });

  test('a net keeps to the strip it is wanted on', () => {
    const two = small(0, [1, 1]);
    const { lift, land } = smallestChange(
      two,
      landed({ 'strip/1': ['spur/L', 'spur/N'] }),
      landed({ 'strip-2/1': ['spur/L', 'spur/N'] }),
    );
    expect([lift.length, land.length]).toEqual([2, 2]);
    expect(land.flat()).not.toContain('strip/1');
  });
});

/*
 * An unvented cylinder on an old three-port system, worked by hand. Only the cylinder call leaves its terminal. The new
 * leads: the two-port's five, the cut-out's two; and the call lands again. Joining the call straight to the cut-out
 * saves one landing. With the cut-out ahead of the thermostat the thermostat's feed moves as well.
 */
test.each([
  ['cut-out-after-thermostat', 1, 8],
  ['thermostat-straight-to-cut-out', 1, 7],
  ['cut-out-before-thermostat', 2, 9],
  // The old strip carries line, neutral and earth, which the looped wiring joins just the same.
  ['looped-supply-and-test-link', 1, 8],
])('from the old three-port to %s: lift %i, land %i', (id, lifts, lands) => {
  const to = must(references.find((one) => one.id === id)).wires;
  const { lift, land } = smallestChange(unvented, oldWires, to);
  expect([lift.length, land.length]).toEqual([lifts, lands]);
  if (id === 'cut-out-after-thermostat') expect(keys(lift)).toEqual(keys([['cyl-stat/CALL', 'strip/6']]));
});

test('the nearest of all right wirings is the one that costs least', () => {
  const wanted = references.map(({ wires }) => wires);
  const { change, nearest } = nearestChange(unvented, oldWires, wanted);
  expect(must(references[nearest]).id).toBe('thermostat-straight-to-cut-out');
  expect(sizeOf(change)).toBe(8);
  expect(nearestChange(unvented, oldWires, [...wanted, oldWires])).toMatchObject({
    nearest: wanted.length,
    change: { lift: [], land: [] },
  });
  expect(() => nearestChange(unvented, oldWires, [])).toThrow('no wiring to change to');
});

test('what was done is counted wire by wire, strip numbers and all', () => {
  const [a, b]: [Wire[], Wire[]] = [
    landed({ 'strip/1': ['spur/L', 'spur/N'] }),
    landed({ 'strip/2': ['spur/L'] }),
  ];
  expect(sizeOf(changeMade(a, b))).toBe(3);
  expect(
    sizeOf(
      changeMade(
        a,
        a.map(([x, y]): Wire => [y, x]),
      ),
    ),
  ).toBe(0);
});

describe('no wiring at all of the wanted circuit is nearer', () => {
  test.each([
    ['four leads and two ways', small(1, [2])],
    ['three leads and three ways', small(0, [3])],
    ['three leads, two ways of one strip and one of another', small(0, [2, 1])],
  ])('%s', { timeout: 60_000 }, (_, system) => {
    const every = everyWiring(system);
    const some = fc.subarray([...every.edges], { maxLength: 8 });
    fc.assert(
      fc.property(some, some, (from, to) => {
        expect(sizeOf(smallestChange(system, from, to))).toBe(fewest(every, from, to));
      }),
      { seed, numRuns: 250 },
    );
  });
});

describe('on a whole system, from any wiring to any other', () => {
  const right = references.map(({ wires }) => wires);
  const runs = { seed, numRuns: 60 };
  const few = wirings(unvented, right).filter(({ length }) => length < 50);

  test('the change makes the wanted circuit out of the very wires that were there', {
    timeout: 60_000,
  }, () => {
    fc.assert(
      fc.property(fc.constantFrom(...right, oldWires), few, (from, to) => {
        const { lift, land, stays } = smallestChange(unvented, from, to);
        expect(keys([...lift, ...stays])).toEqual(keys(from));
        expect(isSameCircuit(unvented, [...stays, ...land], to)).toBe(true);
        expect(sizeOf({ lift, land, stays })).toBeLessThanOrEqual(sizeOf(changeMade(from, to)));
      }),
      runs,
    );
  });

  test('renumbering the wanted strip makes it no smaller and no larger', { timeout: 60_000 }, () => {
    const ways = Array.from({ length: 12 }, (_, k) => `strip/${k + 1}`);
    const shuffled = fc.shuffledSubarray(ways, { minLength: ways.length });
    fc.assert(
      fc.property(few, shuffled, (to, order) => {
        const other = (end: string) => order[ways.indexOf(end)] ?? end;
        const renumbered = to.map(([a, b]): Wire => [other(a), other(b)]);
        expect(sizeOf(smallestChange(unvented, oldWires, renumbered))).toBe(
          sizeOf(smallestChange(unvented, oldWires, to)),
        );
      }),
      runs,
    );
  });
});
