import { describe, expect, test } from 'vitest';
import { buildSystem } from '../../../src/engine/model/build.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { openPaths } from '../../../src/engine/plant/paths.ts';
import { system } from '../support/flagship.ts';
import { placeOf } from '../support/places.ts';

const open = (threePort: string, twoPort: string) =>
  [...openPaths(system, placeOf(system, { 'three-port': threePort, 'two-port': twoPort }))].sort();

// Common practice: the two-port stands in the coil flow, after the cylinder port of the three-port.
describe('where water from the boiler can go', () => {
  test('to the coil only when the three-port leaves its port open and the two-port is not shut', () => {
    expect(open('B', 'open')).toEqual(['coil']);
    expect(open('B', 'part open')).toEqual(['coil']);
    expect(open('B', 'shut')).toEqual([]);
    expect(open('A', 'open')).toEqual(['radiators']);
  });

  test('to both at mid, and to the radiators alone when the two-port is shut', () => {
    expect(open('mid', 'open')).toEqual(['coil', 'radiators']);
    expect(open('mid', 'shut')).toEqual(['radiators']);
    expect(open('A', 'shut')).toEqual(['radiators']);
  });

  test('nowhere without a way back to the boiler', () => {
    const pipes = system.spec.pipes.filter(([from]) => from !== 'coil/out');
    const cut = buildSystem({ ...system.spec, pipes }, findKind);
    expect([...openPaths(cut, placeOf(cut, { 'two-port': 'open' }))]).toEqual([]);
  });
});
