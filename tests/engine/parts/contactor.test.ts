import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const system = onASpur('contactor');
const on = { supply: 'on' };
const coil: Wire[] = [
  ['fused-spur/L', 'contactor/A1'],
  ['fused-spur/N', 'contactor/A2'],
];

describe('the contactor', () => {
  test('its coil pulls it in and a spring lets it go', () => {
    expect(travel(system, coil, on, 0, 'contactor')).toEqual(['open', 'closed']);
    expect(travel(system, coil, {}, placeOf(system, { contactor: 'closed' }), 'contactor')).toEqual([
      'closed',
      'open',
    ]);
  });

  test.each([
    ['1', '2'],
    ['3', '4'],
  ])('pulled in it joins %s to %s', (from, to) => {
    const wires: Wire[] = [['fused-spur/L', `contactor/${from}`]];
    const out = (position: string) =>
      look(system, wires, on, placeOf(system, { contactor: position })).isLive(`contactor/${to}`);
    expect([out('open'), out('closed')]).toEqual([false, true]);
  });

  // Common practice: coil and contacts share nothing, so they may be on two circuits.
  test('a live coil never makes a contact terminal live', () => {
    const { isLive } = look(system, coil, on, placeOf(system, { contactor: 'closed' }));
    expect(['1', '2', '3', '4'].filter((id) => isLive(`contactor/${id}`))).toEqual([]);
  });

  // Assumption, named in the part's file.
  test('its coil holds at about 3 W', () => {
    expect(wattsOf('contactor', 'coil')).toBeCloseTo(3, 1);
  });
});
