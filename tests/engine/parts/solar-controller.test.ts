import { describe, expect, test } from 'vitest';
import type { Settings } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const system = onASpur('solar-controller');
const fed: Wire[] = [
  ['fused-spur/L', 'solar-controller/L'],
  ['fused-spur/N', 'solar-controller/N'],
];
const collector: Wire = ['solar-controller/C1', 'solar-controller/C2'];
const store: Wire = ['solar-controller/S1', 'solar-controller/S2'];
const on = { supply: 'on' };
const reading = placeOf(system, { 'solar-controller': 'reading its sensors' });
const output = (settings: Settings, place = reading) =>
  look(system, fed, { ...on, ...settings }, place).isLive('solar-controller/PUMP');

// Common practice: a differential controller with a limit for the store.
describe('the solar controller', () => {
  test('its output is live only while the sun shines and the store is below its limit', () => {
    expect(output({ sun: 'shining', store: 'calling' })).toBe(true);
    expect(output({ sun: 'dull', store: 'calling' })).toBe(false);
    expect(output({ sun: 'shining', store: 'satisfied' })).toBe(false);
  });

  test('it reads its sensors only when both go round', () => {
    const rests = (...wires: Wire[]) => travel(system, [...fed, ...wires], on, 0, 'solar-controller').at(-1);
    expect(rests(collector, store)).toBe('reading its sensors');
    expect([rests(collector), rests(store), rests()]).toEqual(['in fault', 'in fault', 'in fault']);
  });

  test('in fault its output stays dead in full sun', () => {
    expect(output({ sun: 'shining', store: 'calling' }, 0)).toBe(false);
  });

  // Assumption, named in the part's file.
  test('it draws about 3 W', () => {
    expect(wattsOf('solar-controller', 'electronics')).toBeCloseTo(3, 1);
  });
});
