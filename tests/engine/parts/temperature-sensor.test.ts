import { expect, test } from 'vitest';
import { temperatureSensor } from '../../../src/engine/parts/temperature-sensor.ts';

// BS 7671:2018, 528.1: extra-low voltage is kept apart from mains, so the rules must know these terminals.
test('both leads of a sensor are marked as extra-low voltage', () => {
  expect(temperatureSensor.terminals.map(({ duty }) => duty)).toEqual(['extra-low', 'extra-low']);
});

test('the pair goes round through the sensor until a lead breaks', () => {
  const [element] = temperatureSensor.contacts ?? [];
  expect(element?.closed({ setting: {}, position: '' })).toBe(true);
  expect(temperatureSensor.failures?.map(({ contacts }) => contacts)).toEqual([{ element: 'open' }]);
});
