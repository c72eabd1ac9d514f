import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('gravity-programmer');
const wires: Wire[] = [
  ['fused-spur/L', 'gravity-programmer/L'],
  ['fused-spur/N', 'gravity-programmer/N'],
];
const live = (water: string, heating: string) => {
  const { isLive } = look(system, wires, { supply: 'on', 'hot-water': water, heating }, 0);
  return ['HW-ON', 'CH-ON'].filter((terminal) => isLive(`gravity-programmer/${terminal}`));
};

// Common practice: the two slides are tied together.
describe('the programmer for gravity hot water', () => {
  test('with both off neither output is live', () => {
    expect(live('off', 'off')).toEqual([]);
  });

  test('hot water can be on alone', () => {
    expect(live('on', 'off')).toEqual(['HW-ON']);
  });

  test('heating takes hot water with it', () => {
    expect(live('off', 'on')).toEqual(['HW-ON', 'CH-ON']);
    expect(live('on', 'on')).toEqual(['HW-ON', 'CH-ON']);
  });

  test('its clock runs whatever is chosen', () => {
    expect(look(system, wires, { supply: 'on' }, 0).works('gravity-programmer', 'clock')).toBe(true);
  });

  // Common practice: 5 W for a programmer in a current sum.
  test('its clock draws 5 watts', () => {
    expect(wattsOf('gravity-programmer', 'clock')).toBeCloseTo(5, 2);
  });
});
