import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solve } from '../../../src/engine/meter/solve.ts';

const rows = (...given: number[][]) => given.map((row) => Float64Array.from(row));

test('two equations with two unknowns give both', () => {
  // 2x + y = 5 and x + 3y = 10: x = 1, y = 3, by hand.
  const [x, y] = solve(rows([2, 1], [1, 3]), Float64Array.of(5, 10));
  expect(x).toBeCloseTo(1, 12);
  expect(y).toBeCloseTo(3, 12);
});

test('a zero on the diagonal is stepped around', () => {
  expect([...solve(rows([0, 1], [1, 0]), Float64Array.of(7, 8))]).toEqual([8, 7]);
});

test('equations without a single answer are refused', () => {
  expect(() => solve(rows([1, 1], [1, 1]), Float64Array.of(1, 2))).toThrow(RangeError);
});

test('whatever the equations of a resistive circuit, the answer put back in gives the right-hand side', () => {
  const circuit = fc.integer({ min: 1, max: 12 }).chain((size) =>
    fc.tuple(
      fc.array(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: size, maxLength: size }), {
        minLength: size,
        maxLength: size,
      }),
      fc.array(fc.double({ min: -230, max: 230, noNaN: true }), { minLength: size, maxLength: size }),
    ),
  );
  fc.assert(
    fc.property(circuit, ([siemens, amps]) => {
      // Each row's diagonal outweighs the rest of it, as in any circuit where each net leaks a little to 0 V.
      const given = siemens.map((row, k) => row.map((value, c) => (c === k ? 1 + row.length : -value)));
      const answer = solve(rows(...given), Float64Array.from(amps));
      given.forEach((row, k) => {
        const sum = row.reduce((total, value, c) => total + value * (answer[c] ?? Number.NaN), 0);
        expect(sum).toBeCloseTo(amps[k] ?? Number.NaN, 9);
      });
    }),
    { numRuns: 200 },
  );
});
