import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { timer } from '../../../src/engine/parts/timer.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('timer');
const feed: Wire[] = [
  ['fused-spur/L', 'timer/L'],
  ['fused-spur/N', 'timer/N'],
];
const live = (timed: string, wires: Wire[]) => {
  const { isLive } = look(system, wires, { supply: 'on', timed }, 0);
  return ['timer/ON', 'timer/OFF'].filter(isLive);
};

describe('the single-channel timer', () => {
  // Common practice: the clock and the contact share the line.
  test('its own line comes out on ON while it is on and on OFF while it is off', () => {
    expect(live('on', feed)).toEqual(['timer/ON']);
    expect(live('off', feed)).toEqual(['timer/OFF']);
  });

  test('without its line neither output is live', () => {
    expect([...live('on', feed.slice(1)), ...live('off', feed.slice(1))]).toEqual([]);
  });

  test('its clock needs line and neutral at all times', () => {
    expect(look(system, feed, { supply: 'on' }, 0).works('timer', 'clock')).toBe(true);
    expect(look(system, feed.slice(0, 1), { supply: 'on' }, 0).works('timer', 'clock')).toBe(false);
    expect(timer.permanentLine).toEqual(['L']);
  });

  // Common practice: about 5 W, as counted for a programmer in a typical sum of currents.
  test('its clock draws 5 W', () => {
    expect(wattsOf('timer', 'clock')).toBeCloseTo(5, 2);
  });
});
