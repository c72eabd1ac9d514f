import { expect, test } from 'vitest';
import { findKind } from '../../../src/engine/parts/index.ts';
import { must } from '../support/must.ts';

const ohmsOf = (watts?: number) =>
  must(must(findKind('pump', watts === undefined ? {} : { watts })).elements?.[0]).ohms;

// 60 W for a domestic pump: current sum of a typical set of controls, common practice.
test('a pump draws 60 W at 230 V, or what the system says', () => {
  expect(230 ** 2 / ohmsOf()).toBeCloseTo(60, 1);
  expect(230 ** 2 / ohmsOf(600)).toBeCloseTo(600, 0);
});

// BS 1362 has fuses of 3 A and 5 A; 3 A is usual for heating controls (common practice).
test('a spur has a fuse of 3 A, or what the system says', () => {
  expect(findKind('fused-spur', {})?.supply?.fuse).toBe(3);
  const bigger = must(findKind('fused-spur', { fuse: 5 }));
  expect(bigger.supply?.fuse).toBe(5);
  expect(bigger.terminals.find(({ id }) => id === 'L')?.does).toContain('5 A');
});
