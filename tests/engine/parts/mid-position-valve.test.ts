import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { midPositionValve } from '../../../src/engine/parts/mid-position-valve.ts';
import { right, system } from '../support/flagship.ts';
import { look, placeOf, restsAfter, travel } from '../support/places.ts';

// "Published": analyses of the valve's circuit at energycontrols2.fsnet.co.uk ("3 port valves") and next.gr
// ("mid position valve"), both read in part only. "Derived": worked out from the contact roles they give, printed
// by nobody. Where sources disagree: simple tables at octaveblue.co.uk and ondotdot.pwp.blueyonder.co.uk say that grey
// alone keeps the last position; the two analyses say that from mid it winds on to A. They agree from B and from A.

const on = { supply: 'on' };
const at = (position: string) => placeOf(system, { 'three-port': position });

/** The valve alone, its leads joined to line or to nothing. The thermostat's call is a live on orange from outside. */
const bench = (white: boolean, grey: boolean, call: boolean): Wire[] => [
  ['spur/N', 'three-port/blue'],
  ...(white ? [['spur/L', 'three-port/white'] as const] : []),
  ...(grey ? [['spur/L', 'three-port/grey'] as const] : []),
  ...(call ? [['spur/L', 'three-port/orange'] as const] : []),
];

type Row = [
  white: 0 | 1,
  grey: 0 | 1,
  start: string,
  path: string[],
  orange: 'dead' | 'live',
  status: string,
];
const rows: Row[] = [
  [0, 0, 'B', ['B'], 'dead', 'published'],
  [0, 0, 'mid', ['mid', 'B'], 'dead', 'published'],
  [0, 0, 'A', ['A', 'mid', 'B'], 'dead', 'published'],
  [1, 0, 'B', ['B', 'mid'], 'dead', 'position published, orange derived'],
  [1, 0, 'mid', ['mid'], 'dead', 'position published, orange derived'],
  [1, 0, 'A', ['A', 'mid'], 'dead', 'position published, orange derived'],
  [1, 1, 'B', ['B', 'mid', 'A'], 'live', 'published'],
  [1, 1, 'mid', ['mid', 'A'], 'live', 'published'],
  [1, 1, 'A', ['A'], 'live', 'published'],
  [0, 1, 'B', ['B'], 'dead', 'published'],
  [0, 1, 'mid', ['mid', 'A'], 'dead', 'published by the circuit analyses; simple tables say it stays at mid'],
  [0, 1, 'A', ['A'], 'dead', 'published'],
];

describe('the truth table of the mid-position valve', () => {
  for (const [white, grey, start, path, orange, status] of rows) {
    const inputs = `white ${white ? 'live' : 'dead'} and grey ${grey ? 'live' : 'dead'}`;
    const way = path.length > 1 ? `goes ${path.join(', ')}` : `stays at ${start}`;

    test(`with ${inputs} it ${way}, and orange is ${orange} with the cylinder call open (${status})`, () => {
      const wires = bench(white === 1, grey === 1, false);
      expect(travel(system, wires, on, at(start), 'three-port')).toEqual(path);
      const end = look(system, wires, on, at(path.at(-1) ?? ''));
      expect(end.isLive('three-port/orange')).toBe(orange === 'live');
    });

    test(`with ${inputs} it ${way}, and orange is live with the cylinder call closed (${status})`, () => {
      const wires = bench(white === 1, grey === 1, true);
      expect(travel(system, wires, on, at(start), 'three-port')).toEqual(path);
      expect(look(system, wires, on, at(path.at(-1) ?? '')).isLive('three-port/orange')).toBe(true);
    });
  }

  test('with the supply off it returns to the cylinder from anywhere (published)', () => {
    const wires = bench(true, true, false);
    expect(travel(system, wires, {}, at('A'), 'three-port')).toEqual(['A', 'mid', 'B']);
  });
});

describe('what the motor gets', () => {
  const motor = (wires: Wire[], position: string) => {
    const { works } = look(system, wires, on, at(position));
    return works('three-port', 'motor') ? 'drive' : works('three-port', 'half wave') ? 'hold' : 'nothing';
  };

  test('white alone drives it off rest, holds it at mid with half a wave, and gives nothing at A (published)', () => {
    const wires = bench(true, false, false);
    expect(['B', 'mid', 'A'].map((position) => motor(wires, position))).toEqual(['drive', 'hold', 'nothing']);
  });

  test('white and grey drive it all the way and stall it at A (published)', () => {
    const wires = bench(true, true, false);
    expect(['B', 'mid', 'A'].map((position) => motor(wires, position))).toEqual(['drive', 'drive', 'drive']);
  });

  test('grey alone reaches the motor only once switch 1 is over (published)', () => {
    const wires = bench(false, true, false);
    expect(['B', 'mid', 'A'].map((position) => motor(wires, position))).toEqual([
      'nothing',
      'drive',
      'drive',
    ]);
  });

  test('a call on orange alone never reaches the motor, though at A it makes white live (derived)', () => {
    const wires = bench(false, false, true);
    expect(['B', 'mid', 'A'].map((position) => motor(wires, position))).toEqual([
      'nothing',
      'nothing',
      'nothing',
    ]);
    expect(look(system, wires, on, at('A')).isLive('three-port/white')).toBe(true);
  });

  test('without its neutral it does nothing (derived)', () => {
    const wires = bench(true, true, false).filter(([, end]) => end !== 'three-port/blue');
    expect(motor(wires, 'B')).toBe('nothing');
  });
});

describe('transitions of the mid-position valve', () => {
  test('both on, then the cylinder is satisfied: orange drops out at mid until switch 2 makes at A (derived)', () => {
    const wires = bench(true, true, false);
    expect(look(system, wires, on, at('mid')).isLive('three-port/orange')).toBe(false);
    expect(look(system, wires, on, at('A')).isLive('three-port/orange')).toBe(true);
    expect(travel(system, wires, on, at('mid'), 'three-port')).toEqual(['mid', 'A']);
  });

  test('both on, then the room is satisfied: it returns to B and orange never drops out (derived)', () => {
    const wires = bench(false, false, true);
    const path = travel(system, wires, on, at('mid'), 'three-port');
    expect(path).toEqual(['mid', 'B']);
    expect(path.every((position) => look(system, wires, on, at(position)).isLive('three-port/orange'))).toBe(
      true,
    );
  });

  test('heating only, then the cylinder calls: it falls back from A and is caught at mid (derived)', () => {
    expect(travel(system, bench(true, false, true), on, at('A'), 'three-port')).toEqual(['A', 'mid']);
  });

  test('heating only, then the room is satisfied: it stays at A with its motor on and orange dead (published)', () => {
    const wires = bench(false, true, false);
    expect(travel(system, wires, on, at('A'), 'three-port')).toEqual(['A']);
    const end = look(system, wires, on, at('A'));
    expect(end.works('three-port', 'motor')).toBe(true);
    expect(end.isLive('three-port/orange')).toBe(false);
  });

  test('heating only from rest: orange is dead until the valve has arrived at A (derived)', () => {
    const wires = bench(true, true, false);
    const live = ['B', 'mid', 'A'].map((position) =>
      look(system, wires, on, at(position)).isLive('three-port/orange'),
    );
    expect(live).toEqual([false, false, true]);
  });
});

describe('a live already on orange', () => {
  test('with the valve stuck at A a hot water call feeds white, and through a calling room the heating-on (derived)', () => {
    const settings = { supply: 'on', 'hot-water': 'on', cylinder: 'calling', room: 'calling' };
    const stuck = placeOf(system, { 'three-port': 'A', 'two-port': 'open' });
    const { isLive } = look(system, right, settings, stuck);
    expect(isLive('three-port/white')).toBe(true);
    expect(isLive('programmer/CH-ON')).toBe(true);
  });

  test('grey and orange live together hold it at A and feed white back (derived)', () => {
    const wires = bench(false, true, true);
    expect(travel(system, wires, on, at('mid'), 'three-port')).toEqual(['mid', 'A']);
    expect(look(system, wires, on, at('A')).isLive('three-port/white')).toBe(true);
    expect(travel(system, wires, on, at('B'), 'three-port')).toEqual(['B']);
  });

  test('the right wiring never makes grey and orange live together with the two-port open (derived)', () => {
    const settings = { supply: 'on', 'hot-water': 'on', cylinder: 'calling', heating: 'on', room: 'calling' };
    for (const place of restsAfter(system, right, settings, 0)) {
      const { isLive } = look(system, right, settings, place);
      expect([isLive('three-port/grey'), isLive('three-port/orange')]).toEqual([false, true]);
    }
  });
});

describe('water through the mid-position valve', () => {
  // Source: the same published analyses; the rest port is the cylinder's.
  test('it passes to the cylinder at rest, to both at mid, to the radiators at A', () => {
    const open = ['B', 'mid', 'A'].map((position) =>
      midPositionValve
        .passes?.(position)
        .map(([, to]) => to)
        .sort(),
    );
    expect(open).toEqual([['B'], ['A', 'B'], ['A']]);
  });
});
