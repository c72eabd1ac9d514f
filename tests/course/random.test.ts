import { expect, test } from 'vitest';
import { makeRandom, seedOf } from '../../src/course/random.ts';

const series = (seed: number, length: number) => {
  const random = makeRandom(seed);
  return Array.from({ length }, random.next);
};

test('the same seed gives the same series, and another seed another', () => {
  expect(series(4711, 50)).toEqual(series(4711, 50));
  const first = Array.from({ length: 2000 }, (_, seed) => series(seed, 1)[0]);
  expect(new Set(first).size).toBeGreaterThan(1995);
});

test('fractions are from 0 up to but not including 1, and evenly spread, whatever the seed', () => {
  for (const seed of [0, 1, 2, 0xffffffff]) {
    const tenths = Array.from({ length: 10 }, () => 0);
    for (const fraction of series(seed, 10_000)) {
      expect(fraction).toBeGreaterThanOrEqual(0);
      expect(fraction).toBeLessThan(1);
      const tenth = Math.floor(fraction * 10);
      tenths[tenth] = (tenths[tenth] ?? 0) + 1;
    }
    // 1000 each; five standard deviations are 150.
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
  }
});

test('a shuffle keeps all there is, leaves the list as it was, and puts each thing in each place', () => {
  const list = ['a', 'b', 'c', 'd'] as const;
  const firsts = new Map<string, number>();
  for (let seed = 0; seed < 2000; seed++) {
    const shuffled = makeRandom(seed).shuffle(list);
    expect(shuffled.toSorted()).toEqual([...list]);
    firsts.set(shuffled[0] ?? '', (firsts.get(shuffled[0] ?? '') ?? 0) + 1);
  }
  // 500 each; five standard deviations are 97.
  for (const one of list) expect(Math.abs((firsts.get(one) ?? 0) - 500)).toBeLessThan(97);
});

test('from an empty list nothing can be picked', () => {
  expect(() => makeRandom(1).pick([])).toThrow(RangeError);
  expect(makeRandom(1).pick(['only'])).toBe('only');
});

// Test vectors of FNV-1a, 32 bits, as its authors publish them (from memory).
test('the seed of a text is its FNV-1a hash', () => {
  expect(seedOf('')).toBe(0x811c9dc5);
  expect(seedOf('a')).toBe(0xe40c292c);
  expect(seedOf('foobar')).toBe(0xbf9cf968);
});
