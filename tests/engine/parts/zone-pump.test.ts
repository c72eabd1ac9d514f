import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { zonePump } from '../../../src/engine/parts/zone-pump.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const system = onASpur('zone-pump');
const on = { supply: 'on' };
const wires: Wire[] = [
  ['fused-spur/L', 'zone-pump/L'],
  ['fused-spur/N', 'zone-pump/N'],
];
const running = placeOf(system, { 'zone-pump': 'running' });

describe('the zone pump', () => {
  test('it runs up with its live and stops without it', () => {
    expect(travel(system, wires, on, 0, 'zone-pump')).toEqual(['stopped', 'running']);
    expect(travel(system, wires, {}, running, 'zone-pump')).toEqual(['running', 'stopped']);
  });

  test('a live without its neutral does not run it', () => {
    expect(travel(system, wires.slice(0, 1), on, 0, 'zone-pump')).toEqual(['stopped']);
    expect(look(system, wires, on, 0).works('zone-pump', 'motor')).toBe(true);
  });

  // Common practice: the non-return valve keeps hot water out of the zone while the pump stands.
  test('water passes while it runs and not while it stands', () => {
    expect(zonePump.passes?.('running')).toEqual([['in', 'out']]);
    expect(zonePump.passes?.('stopped')).toEqual([]);
  });

  test('a non-return valve that no longer shuts is among its failures, beside those of any pump', () => {
    const failures = zonePump.failures?.map(({ id }) => id);
    expect(failures).toEqual(expect.arrayContaining(['dead', 'live case', 'flap open']));
  });

  // 60 W: a typical current sum of heating controls, common practice.
  test('it draws 60 watts, as any pump here', () => {
    expect(wattsOf('zone-pump', 'motor')).toBeCloseTo(60, 0);
  });
});
