import { describe, expect, test } from 'vitest';
import { isolator } from '../../../src/engine/parts/isolator.ts';

describe('the isolator of a circuit of its own', () => {
  const closed = (supply: string) =>
    (isolator.contacts ?? []).filter((one) => one.closed({ setting: { supply }, position: '' }));

  // Common practice: double pole; earth is never switched.
  test('it opens line and neutral together and leaves earth joined', () => {
    expect(closed('on')).toHaveLength(2);
    expect(closed('off')).toEqual([]);
    expect(isolator.supply?.earth).toBe('E');
  });

  // Common practice: a 3 kW immersion heater has a 16 A circuit (13 A is what it draws).
  test('its circuit is protected at 16 A', () => {
    expect(isolator.supply?.fuse).toBe(16);
  });
});
