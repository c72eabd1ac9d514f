import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { actuator } from '../../../src/engine/parts/actuator.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { placeOf, travel } from '../support/places.ts';

const system = onASpur('actuator');
const fed: Wire[] = [
  ['fused-spur/L', 'actuator/brown'],
  ['fused-spur/N', 'actuator/blue'],
];

// Common practice: normally closed actuators on floor loops.
describe('the actuator of a floor loop', () => {
  test('it opens with its heater live and shuts without supply', () => {
    expect(travel(system, fed, { supply: 'on' }, 0, 'actuator')).toEqual(['shut', 'open']);
    expect(travel(system, fed, {}, placeOf(system, { actuator: 'open' }), 'actuator')).toEqual([
      'open',
      'shut',
    ]);
  });

  test('it lets water through only while open', () => {
    expect(actuator.passes?.('shut')).toEqual([]);
    expect(actuator.passes?.('open')).toEqual([['in', 'out']]);
  });

  test('it is double insulated: it has no earth', () => {
    expect(actuator.terminals.map(({ core }) => core)).toEqual(['brown', 'blue']);
  });

  // Assumption, named in the part's file: 2 W, between the 1 and 3 W that makers give (from memory).
  test('its heater draws about 2 W', () => {
    expect(wattsOf('actuator', 'heater')).toBeCloseTo(2, 2);
  });
});
