import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('frost-thermostat', 'pipe-thermostat');
const inSeries: Wire[] = [
  ['fused-spur/L', 'frost-thermostat/COM'],
  ['frost-thermostat/CALL', 'pipe-thermostat/COM'],
];
const states = [
  { frost: 'mild', pipe: 'warm' },
  { frost: 'mild', pipe: 'cold' },
  { frost: 'freezing', pipe: 'warm' },
  { frost: 'freezing', pipe: 'cold' },
];
const called = (terminal: string) =>
  states.map((state) => look(system, inSeries, { supply: 'on', ...state }, 0).isLive(terminal));

describe('the frost thermostat', () => {
  // Common practice: it makes on a fall, near +5 °C.
  test('joins COM to CALL in frost alone, whatever the pipe does', () => {
    expect(called('frost-thermostat/CALL')).toEqual([false, false, true, true]);
  });

  // Source: trade pages on frost protection (frost and pipe thermostat in series); temperatures: common practice.
  test('calls through a pipe thermostat in series only while the pipe is cold as well', () => {
    expect(called('pipe-thermostat/CALL')).toEqual([false, false, false, true]);
  });
});
