import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('immersion-heater');
const fed: Wire[] = [
  ['fused-spur/L', 'immersion-heater/L'],
  ['fused-spur/N', 'immersion-heater/N'],
];
const heats = (call: string, trip: string) =>
  look(system, fed, { supply: 'on', call, trip }, 0).works('immersion-heater', 'element');

describe('the immersion heater', () => {
  // Approved Document G, 2015 edition with 2016 amendments, 3.33: its own cut-out; the thermostat is besides (3.17).
  test('it heats only while its thermostat calls and its cut-out is healthy', () => {
    expect(heats('calling', 'healthy')).toBe(true);
    expect(heats('satisfied', 'healthy')).toBe(false);
    expect(heats('calling', 'tripped')).toBe(false);
  });

  // Common practice: 3 kW, which is 13.0 A at 230 V.
  test('it draws 3 kW, about 13 A', () => {
    expect(wattsOf('immersion-heater', 'element')).toBeCloseTo(3000, -1);
    expect(wattsOf('immersion-heater', 'element') / 230).toBeCloseTo(13.0, 1);
  });
});
