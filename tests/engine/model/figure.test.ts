import { describe, expect, it } from 'vitest';
import { figure } from '../../../src/engine/model/figure.ts';

describe('a number in the working', () => {
  it.each([
    [1.005, 2, '1.01'],
    [0.1 + 0.2, 2, '0.3'],
    [10, 2, '10'],
    [-0.456, 2, '−0.46'],
    [-0.001, 2, '0'],
    [1e-7, 2, '0'],
    [1234.5, 0, '1235'],
  ])('%f to %i places is %s', (value, places, text) => {
    expect(figure(value, places)).toBe(text);
  });

  it('keeps its zeros where they say how exact it is', () => {
    expect(figure(2, 2, true)).toBe('2.00');
  });
});
