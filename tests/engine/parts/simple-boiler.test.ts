import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { simpleBoiler } from '../../../src/engine/parts/simple-boiler.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('simple-boiler');
const neutral: Wire = ['fused-spur/N', 'simple-boiler/N'];
const asked = (wires: readonly Wire[], supply = 'on') =>
  look(system, wires, { supply }, 0).works('simple-boiler', 'demand');

// Common practice: a boiler with a standing pilot has one live, and it is the call.
describe('the boiler without electronics', () => {
  test('its one live is all it needs to fire', () => {
    expect(simpleBoiler.work).toEqual({ does: 'fires', needs: ['demand'] });
    expect(asked([neutral, ['fused-spur/L', 'simple-boiler/SL']])).toBe(true);
  });

  test('without its live, its neutral or the supply it does not fire', () => {
    expect(asked([neutral])).toBe(false);
    expect(asked([['fused-spur/L', 'simple-boiler/SL']])).toBe(false);
    expect(asked([neutral, ['fused-spur/L', 'simple-boiler/SL']], 'off')).toBe(false);
  });

  // Assumption, named in the part's file: a gas valve of 20 W.
  test('its gas valve draws 20 watts', () => {
    expect(wattsOf('simple-boiler', 'demand')).toBeCloseTo(20, 2);
  });
});
