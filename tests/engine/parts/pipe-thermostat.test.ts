import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { pipeThermostat } from '../../../src/engine/parts/pipe-thermostat.ts';
import { onASpur } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('pipe-thermostat');
const feed: Wire[] = [['fused-spur/L', 'pipe-thermostat/COM']];

describe('the pipe thermostat', () => {
  // Common practice: it opens on a rise, once the return is near 25 °C, and so ends a frost call.
  test('joins COM to CALL while the pipe is cold and lets go once it is warm', () => {
    const isCalled = (pipe: string) =>
      look(system, feed, { supply: 'on', pipe }, 0).isLive('pipe-thermostat/CALL');
    expect(['cold', 'warm'].map(isCalled)).toEqual([true, false]);
  });

  test('can fail either way: made for good, or open for good', () => {
    expect(pipeThermostat.failures?.map(({ contacts }) => contacts?.pipe)).toEqual(['closed', 'open']);
  });
});
