import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { diverterValve } from '../../../src/engine/parts/diverter-valve.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const kind = 'diverter-valve';
const system = onASpur(kind);
const on = { supply: 'on' };
const neutral: Wire = ['fused-spur/N', `${kind}/blue`];
const driven: Wire[] = [neutral, ['fused-spur/L', `${kind}/brown`]];

// Common practice: two positions, a changeover end switch. It rests open to the radiators by the file's own choice.
describe('the diverter valve', () => {
  test('the motor drives it over and never leaves it half way', () => {
    expect(travel(system, driven, on, 0, kind)).toEqual(['rest', 'between', 'driven']);
    const between = placeOf(system, { [kind]: 'between' });
    expect(travel(system, driven, on, between, kind)).toEqual(['between', 'driven']);
  });

  test('without its live the spring takes it all the way back', () => {
    const over = placeOf(system, { [kind]: 'driven' });
    expect(travel(system, [neutral], on, over, kind)).toEqual(['driven', 'between', 'rest']);
  });

  test.each([
    ['rest', 'white'],
    ['between', 'white'],
    ['driven', 'orange'],
  ])('at %s its switch joins grey to %s alone', (position, lead) => {
    const wires: Wire[] = [['fused-spur/L', `${kind}/grey`]];
    const { isLive } = look(system, wires, on, placeOf(system, { [kind]: position }));
    expect(['white', 'orange'].filter((one) => isLive(`${kind}/${one}`))).toEqual([lead]);
  });

  test('some way through it is open in every position, and only one where it rests', () => {
    const ways = ['rest', 'between', 'driven'].map((position) =>
      (diverterValve.passes?.(position) ?? []).map(([, port]) => port),
    );
    expect(ways).toEqual([['A'], ['A', 'B'], ['B']]);
  });

  // Common practice: 6 W for a valve motor.
  test('its motor draws 6 watts', () => {
    expect(wattsOf(kind, 'motor')).toBeCloseTo(6, 2);
  });
});
