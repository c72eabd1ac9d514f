import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { twoPortValve } from '../../../src/engine/parts/two-port-valve.ts';
import { system } from '../support/flagship.ts';
import { look, placeOf, travel } from '../support/places.ts';

const at = (position: string) => placeOf(system, { 'two-port': position });
const on = { supply: 'on' };
const opening: Wire[] = [
  ['spur/N', 'two-port/blue'],
  ['spur/L', 'two-port/grey'],
  ['spur/L', 'two-port/brown'],
];
const shutting = opening.filter(([, end]) => end !== 'two-port/brown');

describe('the spring-return two-port valve', () => {
  // Source: flameport.com, page on motorised valves: the motor opens it against the spring, then stalls and holds it.
  test('with brown live the motor opens it and keeps it open', () => {
    expect(travel(system, opening, on, at('shut'), 'two-port')).toEqual(['shut', 'part open', 'open']);
    expect(look(system, opening, on, at('open')).works('two-port', 'motor')).toBe(true);
  });

  test('with brown dead the spring shuts it from anywhere', () => {
    expect(travel(system, shutting, on, at('open'), 'two-port')).toEqual(['open', 'part open', 'shut']);
    expect(travel(system, shutting, on, at('part open'), 'two-port')).toEqual(['part open', 'shut']);
  });

  // Source: Approved Document G, 2015 edition with 2016 amendments, 3.31.
  test('with the supply lost the spring shuts it', () => {
    expect(travel(system, opening, {}, at('open'), 'two-port')).toEqual(['open', 'part open', 'shut']);
  });

  // Source: the same page (volt-free, opens early on the way back). That it makes near full travel: from memory.
  test('the end switch hands grey on to orange only when fully open', () => {
    const live = ['shut', 'part open', 'open'].map((p) =>
      look(system, opening, on, at(p)).isLive('two-port/orange'),
    );
    expect(live).toEqual([false, false, true]);
  });

  test('the end switch is volt-free: brown alone never makes orange live', () => {
    const wires = opening.filter(([, end]) => end !== 'two-port/grey');
    expect(look(system, wires, on, at('open')).isLive('two-port/orange')).toBe(false);
  });

  test('the end switch is only a contact: fed on orange it makes grey live', () => {
    const wires: Wire[] = [['spur/L', 'two-port/orange']];
    expect(look(system, wires, on, at('open')).isLive('two-port/grey')).toBe(true);
  });

  // Contract: part open, water passes and the end switch is not made.
  test('it passes water as soon as it is part open', () => {
    const passes = ['shut', 'part open', 'open'].map(
      (position) => (twoPortValve.passes?.(position) ?? []).length,
    );
    expect(passes).toEqual([0, 1, 1]);
  });
});
