import { describe, expect, test } from 'vitest';
import type { Settings } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look, placeOf, travel } from '../support/places.ts';

const kind = 'boiler-sequencer';
const system = onASpur(kind);
const on = { supply: 'on' };
const fed: Wire[] = [
  ['fused-spur/L', `${kind}/L`],
  ['fused-spur/N', `${kind}/N`],
];
const called: Wire[] = [...fed, ['fused-spur/L', `${kind}/IN`]];
const calling = placeOf(system, { [kind]: 'calling' });
const outputs = (wires: readonly Wire[], settings: Settings, place: number) =>
  ['B1', 'B2'].filter((id) => look(system, wires, settings, place).isLive(`${kind}/${id}`));

// Common practice: the first boiler fires with any call, the second only while one cannot keep up.
describe('the boiler sequencer', () => {
  test('a live on IN makes it call, and it waits again when that is gone', () => {
    expect(travel(system, called, on, 0, kind)).toEqual(['waiting', 'calling']);
    expect(travel(system, fed, on, calling, kind)).toEqual(['calling', 'waiting']);
  });

  test('it calls one boiler at a low load and both at a high one', () => {
    expect(outputs(called, on, calling)).toEqual(['B1']);
    expect(outputs(called, { ...on, load: 'high' }, calling)).toEqual(['B1', 'B2']);
  });

  test('however high the load, it calls none while it waits', () => {
    expect(outputs(fed, { ...on, load: 'high' }, 0)).toEqual([]);
  });

  test('its outputs are fed from its own line and never from IN', () => {
    const withoutLine = called.filter(([, to]) => to !== `${kind}/L`);
    expect(outputs(withoutLine, { ...on, load: 'high' }, calling)).toEqual([]);
  });

  test('without its neutral it hears no call', () => {
    const withoutNeutral = called.filter(([, to]) => to !== `${kind}/N`);
    expect(travel(system, withoutNeutral, on, 0, kind)).toEqual(['waiting']);
  });

  // Assumptions, named in the part's file.
  test('it draws 3 watts, and half a watt more while it is called', () => {
    expect(wattsOf(kind, 'electronics')).toBeCloseTo(3, 1);
    expect(wattsOf(kind, 'call')).toBeCloseTo(0.5, 2);
  });
});
