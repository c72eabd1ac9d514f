import { expect, test } from 'vitest';
import { parseAddress } from '../../../src/course/items/index.ts';
import { objectivesOf } from '../../../src/course/outline.ts';
import { courseState } from '../../../src/course/progress/course-state.ts';
import { methodOf } from '../../../src/course/progress/mix.ts';
import { makeRandom } from '../../../src/course/random.ts';
import { loadOutline } from '../../../src/files/site/course.ts';
import { readHash, writeHash } from '../../../src/ui/practice/address.ts';
import { dealMixed, dealTest, passes, readSet } from '../../../src/ui/practice/set.ts';

const outline = loadOutline();

test('A mixed set never has two neighbours of one method', () => {
  const { objectives } = courseState(outline, [], 0);
  for (let seed = 0; seed < 20; seed++) {
    const { places } = dealMixed(objectives, 20, makeRandom(seed));
    expect(places.length).toBe(20);
    const methods = places.map(({ item }) => methodOf(parseAddress(item)?.task ?? { make: '' }));
    methods.forEach((method, k) => {
      expect(method).not.toBe(methods[k - 1]);
    });
  }
});

test('A test of a part asks every objective once', () => {
  for (const part of outline.parts) {
    const objectives = objectivesOf({ parts: [part], routes: [] });
    const asked = dealTest(objectives, makeRandom(3)).places.map(({ objective }) => objective);
    expect([...asked].sort()).toEqual(objectives.map(({ id }) => id).sort());
  }
});

test('Four of five pass, three of four do not', () => {
  const set = (...results: boolean[]) => ({
    places: results.map((_, k) => ({ objective: `o${k}`, item: `i${k}` })),
    results,
  });
  expect(passes(set(true, true, true, true, false))).toBe(true);
  expect(passes(set(true, true, true, false))).toBe(false);
  expect(passes(set())).toBe(false);
});

test('A set kept on the device comes back, and anything else does not', () => {
  const set = { places: [{ objective: 'a', item: 'b' }], results: [true] };
  expect(readSet(JSON.parse(JSON.stringify(set)))).toEqual(set);
  for (const data of [null, 1, {}, { places: [1], results: [] }, { places: [], results: [true] }])
    expect(readSet(data)).toBeUndefined();
});

test('Addresses are written as they are read', () => {
  for (const hash of [
    '#item=sum/expansion/7/1',
    '#objective=a-b',
    '#objective=a-b&item=x/y/1/2',
    '#mixed=5',
    '#visit=no-heating',
    '#revise=20&item=x/y/1/2',
  ])
    expect(writeHash(readHash(hash))).toBe(hash);
  expect(readHash('#revise')).toEqual({ kind: 'revise', most: 10, item: undefined });
  expect(readHash('')).toEqual({ kind: 'start' });
});
