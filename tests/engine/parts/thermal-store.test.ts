import { describe, expect, test } from 'vitest';
import { openPaths } from '../../../src/engine/plant/paths.ts';
import { librarySystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { placeOf } from '../support/places.ts';

const systemNamed = (name: string) => must(librarySystems.find(({ id }) => id === name)).system;

describe('the thermal store', () => {
  const system = systemNamed('thermal-store');

  // Common practice: the heating is drawn from the store itself, by a pump of its own.
  test('it heats the radiators while the zone pump runs, whether or not the boiler’s valve is open', () => {
    const pumpRuns = placeOf(system, { 'zone-pump': 'running' });
    expect([...openPaths(system, pumpRuns)]).toEqual(['radiators']);
  });

  test('with the zone pump at rest it heats nothing, though the boiler charges it', () => {
    const charging = placeOf(system, { 'store-valve': 'open' });
    expect([...openPaths(system, charging)]).toEqual(['coil']);
  });
});

describe('the low-loss header', () => {
  const system = systemNamed('two-boilers');

  // Common practice: the header joins flow and return, so that the boilers’ water always has a way.
  test('it lets the boilers’ water by with every valve shut, and warms no zone by that', () => {
    expect([...openPaths(system, 0)]).toEqual(['header']);
  });

  test('either boiler can warm either zone through it', () => {
    const open = placeOf(system, { 'water-valve': 'open', 'heating-valve': 'open' });
    expect([...openPaths(system, open)].sort()).toEqual(['coil', 'header', 'radiators']);
  });
});
