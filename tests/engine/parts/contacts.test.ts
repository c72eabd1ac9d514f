import { describe, expect, test } from 'vitest';
import type { PartKind } from '../../../src/engine/model/part.ts';
import { energyCutOut } from '../../../src/engine/parts/cut-out.ts';
import { twoChannelProgrammer } from '../../../src/engine/parts/programmer.ts';
import { fusedSpur } from '../../../src/engine/parts/spur.ts';
import { cylinderThermostat, roomThermostat } from '../../../src/engine/parts/thermostats.ts';

/** Which nodes are joined by closed contacts, as "a-b", with these settings. */
const joined = (kind: PartKind, setting: Record<string, string>): string[] =>
  (kind.contacts ?? [])
    .filter(({ closed }) => closed({ setting, position: '' }))
    .map(({ between }) => between.join('-'));

describe('contacts that people and temperatures work', () => {
  // Common practice: each channel is a changeover from the programmer's own line.
  test('each channel of the programmer is live on exactly one of its two outputs', () => {
    expect(joined(twoChannelProgrammer, { 'hot-water': 'off', heating: 'off' })).toEqual([
      'L-HW-OFF',
      'L-CH-OFF',
    ]);
    expect(joined(twoChannelProgrammer, { 'hot-water': 'on', heating: 'off' })).toEqual([
      'L-HW-ON',
      'L-CH-OFF',
    ]);
    expect(joined(twoChannelProgrammer, { 'hot-water': 'off', heating: 'on' })).toEqual([
      'L-HW-OFF',
      'L-CH-ON',
    ]);
    expect(joined(twoChannelProgrammer, { 'hot-water': 'on', heating: 'on' })).toEqual([
      'L-HW-ON',
      'L-CH-ON',
    ]);
  });

  // Common practice: call and satisfied are one changeover, so they are never live together.
  test.each([cylinderThermostat, roomThermostat])(
    '$title joins common to call or to satisfied, never to both',
    (kind) => {
      expect(joined(kind, { call: 'calling' })).toEqual(['COM-CALL']);
      expect(joined(kind, { call: 'satisfied' })).toEqual(['COM-SAT']);
    },
  );

  // Approved Document G, 2015 edition with 2016 amendments, key terms: it interrupts, and only a hand resets it.
  test('the cut-out is closed while healthy and open once tripped', () => {
    expect(joined(energyCutOut, { trip: 'healthy' })).toEqual(['IN-OUT']);
    expect(joined(energyCutOut, { trip: 'tripped' })).toEqual([]);
  });

  // Common practice: one double-pole fused connection unit serves all controls. Earth is never switched.
  test('the spur opens line and neutral together and leaves earth joined', () => {
    expect(joined(fusedSpur, { supply: 'on' })).toEqual(['line-L', 'neutral-N']);
    expect(joined(fusedSpur, { supply: 'off' })).toEqual([]);
    expect(fusedSpur.supply?.earth).toBe('E');
  });
});

describe('what is set on a cold system', () => {
  test('supply, hot water and heating are off, both thermostats satisfied, the cut-out healthy', () => {
    const rest = [fusedSpur, twoChannelProgrammer, roomThermostat, cylinderThermostat, energyCutOut].flatMap(
      ({ inputs }) => (inputs ?? []).map(({ settings }) => settings[0]),
    );
    expect(rest).toEqual(['off', 'off', 'off', 'satisfied', 'satisfied', 'healthy']);
  });
});
