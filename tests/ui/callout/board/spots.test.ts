import { expect, test } from 'vitest';
import { nearestSpot, spotBy } from '../../../../src/ui/callout/board/spots.ts';

/** A strip upright with three ways, and a part beside it with three terminals in a row. */
const SPOTS = [
  { id: 'strip/1', x: 100, y: 100 },
  { id: 'strip/2', x: 100, y: 140 },
  { id: 'strip/3', x: 100, y: 180 },
  { id: 'pump/L', x: 300, y: 150 },
  { id: 'pump/N', x: 346, y: 150 },
  { id: 'pump/E', x: 392, y: 150 },
];

test('The arrows lead along a strip and on to the part beside it', () => {
  expect(spotBy('ArrowDown', SPOTS, 'strip/1')).toBe('strip/2');
  expect(spotBy('ArrowUp', SPOTS, 'strip/3')).toBe('strip/2');
  expect(spotBy('ArrowRight', SPOTS, 'strip/2')).toBe('pump/L');
  expect(spotBy('ArrowRight', SPOTS, 'pump/L')).toBe('pump/N');
  expect(spotBy('ArrowLeft', SPOTS, 'pump/L')).toBe('strip/2');
});

test('At the end of the wall an arrow leads nowhere, and Home and End lead to the first and last terminal', () => {
  expect(spotBy('ArrowUp', SPOTS, 'strip/1')).toBeUndefined();
  expect(spotBy('ArrowRight', SPOTS, 'pump/E')).toBeUndefined();
  expect(spotBy('Home', SPOTS, 'pump/N')).toBe('strip/1');
  expect(spotBy('End', SPOTS, 'strip/1')).toBe('pump/E');
  expect(spotBy('Tab', SPOTS, 'strip/1')).toBeUndefined();
});

test('A probe let go near a terminal goes on the nearest, and far from all on none', () => {
  expect(nearestSpot(SPOTS, { x: 322, y: 150 })).toBe('pump/L');
  expect(nearestSpot(SPOTS, { x: 325, y: 150 })).toBe('pump/N');
  expect(nearestSpot(SPOTS, { x: 200, y: 150 })).toBeUndefined();
});
