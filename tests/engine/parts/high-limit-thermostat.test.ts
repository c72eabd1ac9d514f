import { expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('high-limit-thermostat');
const wires: Wire[] = [['fused-spur/L', 'high-limit-thermostat/IN']];

// Common practice: it opens on heat and closes again by itself.
test('the limit hands the live on while the water is cool, and not while it is too hot', () => {
  const out = (limit: string) =>
    look(system, wires, { supply: 'on', limit }, 0).isLive('high-limit-thermostat/OUT');
  expect(out('cool')).toBe(true);
  expect(out('too hot')).toBe(false);
});
