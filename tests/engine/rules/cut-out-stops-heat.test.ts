import { describe, expect, test } from 'vitest';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { SystemSpec } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';

/*
 * Approved Document G, 2015 edition with 2016 amendments, 3.28 and 3.33: the cut-out of a heat source disconnects that
 * source. The course's immersions have theirs inside the head, where no wiring gets past it; this one has it outside.
 */
const spec: SystemSpec = {
  id: 'cut-out-beside-the-immersion',
  title: 'An immersion with its cut-out in a box of its own',
  parts: {
    isolator: { kind: 'isolator', name: 'Isolator' },
    'cut-out': { kind: 'energy-cut-out', name: 'Cut-out', inputs: { trip: 'outer-trip' } },
    immersion: {
      kind: 'immersion-heater',
      name: 'Immersion',
      inputs: { call: 'thermostat', trip: 'inner-trip' },
    },
    strip: { kind: 'strip', name: 'Strip', options: { ways: 4 } },
  },
  inputs: {
    supply: { label: 'Supply' },
    thermostat: { label: 'Thermostat' },
    'outer-trip': { label: 'Outer cut-out' },
    'inner-trip': { label: 'Inner cut-out' },
  },
  pipes: [],
  demands: [
    {
      id: 'water',
      says: 'hot water',
      when: { thermostat: 'calling', 'outer-trip': 'healthy', 'inner-trip': 'healthy' },
      heats: 'immersion',
      runs: ['immersion'],
    },
  ],
  stores: [
    {
      id: 'cylinder',
      says: 'cylinder',
      unvented: true,
      refill: 'automatic',
      heatSources: [{ part: 'immersion', thermostat: 'thermostat', cutOuts: ['outer-trip', 'inner-trip'] }],
      relief: ['temperature and pressure'],
    },
  ],
};
const system = buildSystem(spec, findKind);
const right: Wire[] = [
  ['isolator/L', 'strip/1'],
  ['strip/1', 'cut-out/IN'],
  ['cut-out/OUT', 'strip/2'],
  ['strip/2', 'immersion/L'],
  ['isolator/N', 'strip/3'],
  ['strip/3', 'immersion/N'],
  ['isolator/E', 'strip/4'],
  ['strip/4', 'immersion/E'],
];
const bypassed: Wire[] = [...right, ['strip/1', 'strip/2']];

describe('a tripped cut-out stops its heat source', () => {
  test('with the cut-out in the way of the current, the wiring is accepted', () => {
    expect(makeJudge(system).judge(right).findings).toEqual([]);
  });

  test('with a link past the cut-out, the heat goes on after the trip: a danger, shown in that state', () => {
    const { accepted, findings } = makeJudge(system).judge(bypassed);
    expect(accepted).toBe(false);
    const found = findings.find(({ id }) => id === 'cut-out-stops-heat');
    expect(found?.severity).toBe('danger');
    expect(found?.inputs).toMatchObject({ 'outer-trip': 'tripped', thermostat: 'calling', supply: 'on' });
  });

  test('one state at a time says the same', () => {
    const broken = (wires: Wire[]) => judgePlain(system, wires).broken.get('cut-out-stops-heat')?.size;
    expect(broken(right)).toBe(0);
    expect(broken(bypassed)).toBe(1);
  });
});
