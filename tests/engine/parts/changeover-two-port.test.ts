import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const kind = 'changeover-two-port';
const system = onASpur(kind);
const on = { supply: 'on' };
const neutral: Wire = ['fused-spur/N', `${kind}/blue`];
const driven: Wire[] = [neutral, ['fused-spur/L', `${kind}/brown`]];

/** Which of the two other leads of the switch grey feeds in this position. */
const fedBy = (position: string) => {
  const wires: Wire[] = [['fused-spur/L', `${kind}/grey`]];
  const { isLive } = look(system, wires, on, placeOf(system, { [kind]: position }));
  return ['white', 'orange'].filter((lead) => isLive(`${kind}/${lead}`));
};

// Common practice: grey is the common, white is made until the valve is open, orange from then on.
describe('the two-port valve with a changeover switch', () => {
  test.each([
    ['shut', 'white'],
    ['part open', 'white'],
    ['open', 'orange'],
  ])('%s, its switch joins grey to %s alone', (position, lead) => {
    expect(fedBy(position)).toEqual([lead]);
  });

  test('its motor opens it', () => {
    expect(travel(system, driven, on, 0, kind)).toEqual(['shut', 'part open', 'open']);
  });

  test('without its live the spring shuts it', () => {
    const open = placeOf(system, { [kind]: 'open' });
    expect(travel(system, [neutral], on, open, kind)).toEqual(['open', 'part open', 'shut']);
  });

  test('white is no motor lead: a live on it moves nothing', () => {
    const wires: Wire[] = [neutral, ['fused-spur/L', `${kind}/white`]];
    expect(travel(system, wires, on, 0, kind)).toEqual(['shut']);
  });

  // Common practice: 6 W for a valve motor.
  test('its motor draws 6 watts', () => {
    expect(wattsOf(kind, 'motor')).toBeCloseTo(6, 2);
  });
});
