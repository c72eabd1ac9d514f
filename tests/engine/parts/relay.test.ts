import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const system = onASpur('relay');
const on = { supply: 'on' };
const coil: Wire[] = [
  ['fused-spur/L', 'relay/A1'],
  ['fused-spur/N', 'relay/A2'],
];
const at = (position: string) => placeOf(system, { relay: position });

describe('the relay', () => {
  test('its coil pulls it in and a spring lets it go', () => {
    expect(travel(system, coil, on, at('let go'), 'relay')).toEqual(['let go', 'pulled in']);
    expect(travel(system, coil, {}, at('pulled in'), 'relay')).toEqual(['pulled in', 'let go']);
  });

  test('a coil without its neutral pulls nothing in', () => {
    expect(travel(system, coil.slice(0, 1), on, at('let go'), 'relay')).toEqual(['let go']);
  });

  // Common practice: what goes in on 11 comes out on 14, and the coil shares nothing with them.
  test('hands 11 on to 14 only while pulled in, and never what feeds its coil', () => {
    const isOut = (position: string, wires: Wire[]) =>
      look(system, wires, on, at(position)).isLive('relay/14');
    const fed: Wire[] = [...coil, ['fused-spur/L', 'relay/11']];
    expect([isOut('let go', fed), isOut('pulled in', fed)]).toEqual([false, true]);
    expect(isOut('pulled in', coil)).toBe(false);
  });

  // Assumption, named in the part's file.
  test('its coil draws 2 W', () => {
    expect(wattsOf('relay', 'coil')).toBeCloseTo(2, 2);
  });
});
