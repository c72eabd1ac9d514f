import { expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { boostSwitch } from '../../../src/engine/parts/boost-switch.ts';
import { onASpur } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('boost-switch');
const wires: Wire[] = [['fused-spur/L', 'boost-switch/IN']];

test('the boost switch hands the live on only while the boost is on', () => {
  const out = (boost: string) => look(system, wires, { supply: 'on', boost }, 0).isLive('boost-switch/OUT');
  expect(out('on')).toBe(true);
  expect(out('off')).toBe(false);
});

// Common practice: made for 16 A, as an immersion heater draws 13 A.
test('its contact may carry 16 A', () => {
  expect(boostSwitch.contacts?.map(({ amps }) => amps)).toEqual([16]);
});
