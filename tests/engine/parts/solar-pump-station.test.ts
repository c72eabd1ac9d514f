import { expect, test } from 'vitest';
import { solarPumpStation } from '../../../src/engine/parts/solar-pump-station.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

test('its pump runs between line and neutral', () => {
  const { works } = look(
    onASpur('solar-pump-station'),
    [
      ['fused-spur/L', 'solar-pump-station/L'],
      ['fused-spur/N', 'solar-pump-station/N'],
    ],
    { supply: 'on' },
    0,
  );
  expect(works('solar-pump-station', 'motor')).toBe(true);
});

// Approved Document G, 2015 edition with 2016 amendments, 3.32 and 3.33: the sun is a heat source of its own.
test('it brings heat of its own, from its flow back to its return', () => {
  expect(solarPumpStation.heat).toBe('gives');
  expect(solarPumpStation.ports).toEqual(['flow', 'return']);
});

// Common practice: 60 W, as in the current sum of a typical set of controls.
test('its pump draws about 60 W', () => {
  expect(wattsOf('solar-pump-station', 'motor')).toBeCloseTo(60, 0);
});
