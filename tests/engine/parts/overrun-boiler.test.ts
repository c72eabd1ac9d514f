import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const kind = 'overrun-boiler';
const system = onASpur(kind);
const on = { supply: 'on' };
const waiting: Wire[] = [
  ['fused-spur/L', `${kind}/L`],
  ['fused-spur/N', `${kind}/N`],
];
const asked: Wire[] = [...waiting, ['fused-spur/L', `${kind}/SL`]];
const running = placeOf(system, { [kind]: 'running' });
const pumpIsLive = (wires: readonly Wire[], place: number) =>
  look(system, wires, on, place).isLive(`${kind}/PUMP`);

// Common practice: the pump is fed from the boiler's own terminal, and for some minutes after the call.
describe('the boiler with pump overrun', () => {
  test('a call makes it feed the pump', () => {
    expect(travel(system, asked, on, 0, kind)).toEqual(['stopped', 'running']);
    expect(pumpIsLive(asked, running)).toBe(true);
  });

  test('when the call ends the pump is still fed, until the overrun has run out', () => {
    expect(pumpIsLive(waiting, running)).toBe(true);
    expect(travel(system, waiting, on, running, kind)).toEqual(['running', 'stopped']);
    expect(pumpIsLive(waiting, 0)).toBe(false);
  });

  test('without a permanent line there is no overrun', () => {
    const wires = waiting.filter(([, to]) => to !== `${kind}/L`);
    expect(pumpIsLive(wires, running)).toBe(false);
  });

  test('its pump terminal linked to its switched line holds it on for good', () => {
    const latched: Wire[] = [...waiting, [`${kind}/PUMP`, `${kind}/SL`]];
    expect(travel(system, latched, on, 0, kind)).toEqual(['stopped']);
    expect(travel(system, latched, on, running, kind)).toEqual(['running']);
  });

  // 140 W: common practice for a heat-only boiler. 0.5 W: assumption, named in the part's file.
  test('its electronics draw 140 watts and the demand next to nothing', () => {
    expect(wattsOf(kind, 'electronics')).toBeCloseTo(140, 0);
    expect(wattsOf(kind, 'demand')).toBeCloseTo(0.5, 2);
  });
});
