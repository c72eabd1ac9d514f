import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { wiringCentre } from '../../../src/engine/parts/wiring-centre.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const system = onASpur('wiring-centre');
const on = { supply: 'on' };
const fed: Wire[] = [
  ['fused-spur/L', 'wiring-centre/L'],
  ['fused-spur/N', 'wiring-centre/N'],
];
const calling = (loop: number): Wire[] => [...fed, ['fused-spur/L', `wiring-centre/S${loop}`]];
const live = (wires: readonly Wire[], terminal: string, position = 'stopped') =>
  look(system, wires, on, placeOf(system, { 'wiring-centre': position })).isLive(`wiring-centre/${terminal}`);

// Common practice: room thermostats to actuators, and any of them to the pump and the zone valve.
describe('the wiring centre of an underfloor manifold', () => {
  test.each([1, 2, 3])(
    'a call on loop %i makes the output to its own actuator live, and no other',
    (loop) => {
      const outputs = [1, 2, 3].filter((k) => live(calling(loop), `A${k}`));
      expect(outputs).toEqual([loop]);
    },
  );

  test.each([1, 2, 3])('a call on loop %i alone pulls the relay in', (loop) => {
    expect(travel(system, calling(loop), on, 0, 'wiring-centre')).toEqual(['stopped', 'running']);
  });

  test('without a call the relay drops out', () => {
    const running = placeOf(system, { 'wiring-centre': 'running' });
    expect(travel(system, fed, on, running, 'wiring-centre')).toEqual(['running', 'stopped']);
  });

  test('pump and valve outputs are live only while the relay is in', () => {
    for (const output of ['P', 'V']) {
      expect(live(calling(1), output)).toBe(false);
      expect(live(calling(1), output, 'running')).toBe(true);
    }
  });

  test('the relay does not pull in without its neutral', () => {
    const wires = calling(1).filter(([from]) => from !== 'fused-spur/N');
    expect(travel(system, wires, on, 0, 'wiring-centre')).toEqual(['stopped']);
  });

  // Assumption, named in the part's file: about 1 W for each call input.
  test('each call draws about a watt', () => {
    expect(wattsOf('wiring-centre', 'call 2')).toBeCloseTo(1, 2);
  });

  test('it has as many loops as the system says', () => {
    const calls = wiringCentre({ loops: 5 }).terminals.filter(({ id }) => /^S\d$/.test(id));
    expect(calls.map(({ id }) => id)).toEqual(['S1', 'S2', 'S3', 'S4', 'S5']);
  });
});
