import { describe, expect, test } from 'vitest';
import type { Store, SystemSpec } from '../../../src/engine/model/system.ts';
import { checkStores } from '../../../src/engine/rules/stores.ts';
import { system } from '../support/flagship.ts';
import { must } from '../support/must.ts';

/*
 * Every paragraph named here: Approved Document G, England, 2015 edition with 2016 amendments, section G3.
 */

const spec: SystemSpec = system.spec;
const cylinder: Store = must(spec.stores?.[0]);
const coil = must(cylinder.heatSources[0]);

/** Rules that a system breaks when its cylinder is changed. */
const broken = (change: Partial<Store>, more: Partial<SystemSpec> = {}): string[] =>
  checkStores({ ...spec, ...more, stores: [{ ...cylinder, ...change }] }).map(({ rule }) => rule);

/** A second cut-out, and an immersion heater that it serves. */
const boilerAndImmersion: Partial<SystemSpec> = {
  parts: {
    ...spec.parts,
    immersion: { kind: 'cylinder-coil', name: 'Immersion heater' },
    'second-cut-out': { kind: 'energy-cut-out', name: 'Second cut-out', inputs: { trip: 'second-trip' } },
  },
};
const immersion = { part: 'immersion', thermostat: 'immersion-stat', cutOuts: ['second-trip'] };

test('the cylinder of the unvented three-port keeps every rule', () => {
  expect(checkStores(spec)).toEqual([]);
  expect(must(spec.stores).length).toBeGreaterThan(0);
});

describe('two safety devices besides the thermostat (3.17 and 3.18)', () => {
  test('cut-out and temperature relief valve are two', () => {
    expect(broken({ relief: ['temperature'] })).toEqual([]);
  });

  test('without the relief valve there is one', () => {
    expect(broken({ relief: [] })).toEqual(['two-safety-devices']);
  });

  test('an expansion valve minds the pressure, so it is not one of them', () => {
    expect(broken({ relief: ['expansion'] })).toEqual(['two-safety-devices']);
  });

  test('one cut-out told twice is still one', () => {
    const twice = { ...coil, cutOuts: ['cut-out', 'cut-out'] };
    expect(broken({ heatSources: [twice], relief: [] })).toEqual(['two-safety-devices']);
  });

  test('a thermostat that is called the cut-out is not additional to the thermostat, nor reset by hand', () => {
    const own = { ...coil, cutOuts: ['cylinder'] };
    expect(broken({ heatSources: [own] })).toEqual(['two-safety-devices', 'own-cut-out']);
    const same = { ...coil, thermostat: 'cut-out' };
    expect(broken({ heatSources: [same] })).toEqual(['two-safety-devices', 'own-cut-out']);
  });

  test('the devices do not stand in for the thermostat', () => {
    const { thermostat: _, ...bare } = coil;
    expect(broken({ heatSources: [bare] })).toEqual(['thermostat-besides']);
  });
});

describe('every heat source has its own cut-out, reset by hand (3.32 and 3.33)', () => {
  test('a boiler and an immersion heater with one each', () => {
    expect(broken({ heatSources: [coil, immersion] }, boilerAndImmersion)).toEqual([]);
  });

  test('two that share one', () => {
    const sharing = { ...immersion, cutOuts: coil.cutOuts };
    expect(broken({ heatSources: [coil, sharing] }, boilerAndImmersion)).toEqual(['own-cut-out']);
  });

  test('one that has none is named', () => {
    const troubles = checkStores({
      ...spec,
      ...boilerAndImmersion,
      stores: [{ ...cylinder, heatSources: [coil, { ...immersion, cutOuts: [] }] }],
    });
    const own = must(troubles.find(({ rule }) => rule === 'own-cut-out'));
    expect(own.says).toContain('immersion');
    expect(own.says).not.toContain('coil');
    expect(own.source).toContain('3.33');
  });
});

test('the demand that heats an unvented cylinder names the valve that shuts it off (3.28, 3.30 and 3.31)', () => {
  const demands = spec.demands.map(({ valve: _, ...demand }) => demand);
  expect(broken({}, { demands })).toEqual(['valve-for-the-cut-out']);
});

describe('no valve that opens on heat where nothing fills up what it lets out (3.35)', () => {
  const twoCutOuts = { ...coil, cutOuts: ['cut-out', 'second-trip'] };

  test('a store that is not refilled by itself has two cut-outs instead', () => {
    const store: Partial<Store> = { refill: 'none', heatSources: [twoCutOuts], relief: ['expansion'] };
    expect(broken(store, boilerAndImmersion)).toEqual([]);
  });

  test.each(['temperature', 'temperature and pressure'] as const)('one with a %s relief valve', (valve) => {
    const store: Partial<Store> = { refill: 'none', heatSources: [twoCutOuts], relief: [valve] };
    expect(broken(store, boilerAndImmersion)).toEqual(['relief-needs-refill']);
  });
});

describe('stores that these rules do not speak of', () => {
  const bare: Partial<Store> = { heatSources: [{ part: 'coil', cutOuts: [] }], relief: [] };

  test('a vented one has its vent pipe (3.12 and 3.13)', () => {
    expect(broken({ ...bare, unvented: false })).toEqual([]);
    expect(broken(bare).length).toBeGreaterThan(1);
  });

  test('a heater of at most 15 litres has safety devices of its own (3.19)', () => {
    expect(broken({ ...bare, litres: 15 })).toEqual([]);
    expect(broken({ ...bare, litres: 15.1 }).length).toBeGreaterThan(1);
  });

  test('a system without a store', () => {
    const { stores: _, ...none } = spec;
    expect(checkStores(none)).toEqual([]);
  });
});
