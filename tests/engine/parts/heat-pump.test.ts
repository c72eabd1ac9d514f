import { describe, expect, test } from 'vitest';
import { evaluate, partWorks } from '../../../src/engine/circuit/plain.ts';
import { bitsOf, type Settings } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('heat-pump', 'temperature-sensor');
const fed: Wire[] = [
  ['fused-spur/L', 'heat-pump/L'],
  ['fused-spur/N', 'heat-pump/N'],
];
const sensor: Wire[] = [
  ['heat-pump/T1', 'temperature-sensor/S1'],
  ['heat-pump/T2', 'temperature-sensor/S2'],
];
const asked: Wire = ['heat-pump/HT1', 'heat-pump/HT2'];
const on = { supply: 'on' };
const water = { ...on, 'hot-water': 'on', tank: 'calling' };
const part = system.parts.findIndex(({ id }) => id === 'heat-pump');
const fires = (wires: readonly Wire[], settings: Settings) =>
  partWorks(system, evaluate(system, wires, { inputs: bitsOf(system, settings), place: 0 }), part);

// Common practice: volt-free heating call, hot water by its own clock and tank sensor.
describe('the heat pump', () => {
  test('it runs when its heating pair is joined, and not while the pair is open', () => {
    expect(fires([...fed, ...sensor, asked], on)).toBe(true);
    expect(fires([...fed, ...sensor], on)).toBe(false);
  });

  test('it runs for hot water by itself, when that is on and the tank is too cold', () => {
    expect(fires([...fed, ...sensor], water)).toBe(true);
    expect(fires([...fed, ...sensor], { ...water, tank: 'satisfied' })).toBe(false);
    expect(fires([...fed, ...sensor], { ...water, 'hot-water': 'off' })).toBe(false);
  });

  test('without its tank sensor it shows a fault and runs for nothing', () => {
    expect(fires([...fed, asked], water)).toBe(false);
  });

  test('it does not run without its supply, though its pair is joined', () => {
    expect(fires([...fed, ...sensor, asked], {})).toBe(false);
  });

  test('the diverter output is live while hot water is made, the immersion output while it pasteurises', () => {
    const outputs = (settings: Settings) =>
      ['DV', 'IM'].filter((id) => look(system, fed, settings, 0).isLive(`heat-pump/${id}`));
    expect(outputs(on)).toEqual([]);
    expect(outputs(water)).toEqual(['DV']);
    expect(outputs({ ...on, pasteurise: 'on' })).toEqual(['IM']);
  });

  // Assumption, named in the part's file: 100 W for the indoor controls and circulator.
  test('its indoor part draws about 100 W', () => {
    expect(wattsOf('heat-pump', 'electronics')).toBeCloseTo(100, 0);
  });
});
