/**
 * The fault table of the course, rows that ask for a hand in the wiring or on a lever, played against the engine. Source
 * of every row: common practice.
 */
import { describe, expect, test } from 'vitest';
import { bridge, lever, lift, resetCutOut } from '../../../src/engine/diagnose/visit.ts';
import { call } from './callout.ts';
import { expectFinds, visitTo } from './rows.ts';

describe('mid-position valve', () => {
  const on = 'three-port';

  test('Heating hot with hot water only, back-feed from orange: lift orange and white drops', () => {
    const visit = visitTo(on, ['three-port: stuck at A']);
    visit.set(call.water);
    expectFinds(visit, { 'tester three-port/white spur/N': 230, 'warms radiators': true });
    visit.set({ supply: 'off' }).do((setup) => lift(setup, ['three-port/orange', 'strip/6']));
    visit.set({ supply: 'on' });
    expectFinds(visit, { 'tester three-port/white spur/N': 0 });
  });

  test('Boiler runs with a hot cylinder: lift the call core of its thermostat and orange falls', () => {
    const visit = visitTo(on, ['cyl-stat: welded calling']);
    visit.set({ 'hot-water': 'on', cylinder: 'satisfied', supply: 'off' });
    visit.do((setup) => lift(setup, ['cyl-stat/CALL', 'strip/6']));
    visit.set({ supply: 'on' });
    expectFinds(visit, { 'tester three-port/orange spur/N': 0, 'works boiler': false });
    expect(visit.read('tester', 'cyl-stat/CALL', 'spur/N')).toBe(230);
  });
});

describe('two two-port valves', () => {
  const on = 'two-two-ports-unvented';

  test('Heating hot with hot water only: a latched lever warms the radiators with brown at 0, and its end switch does not make', () => {
    const visit = visitTo(on, []);
    visit.do((setup) => lever(setup, 'heating-valve'));
    expectFinds(visit, { 'stands heating-valve': 'part open', 'tester heating-valve/orange spur/N': 0 });
    visit.set(call.water);
    expectFinds(visit, { 'tester heating-valve/brown spur/N': 0, 'warms radiators': true });
    visit.do((setup) => lever(setup, 'heating-valve'));
    expectFinds(visit, { 'stands heating-valve': 'shut', 'warms radiators': false });
  });

  test('Boiler runs, no demand: disconnect each orange in turn, and the welded one stops the boiler', () => {
    for (const [valve, stops] of [
      ['heating-valve', false],
      ['water-valve', true],
    ] as const) {
      const visit = visitTo(on, ['water-valve: end switch welded']);
      visit.set({ supply: 'off' }).do((setup) => lift(setup, [`${valve}/orange`, 'strip/7']));
      visit.set({ supply: 'on' });
      expect(visit.works('boiler')).toBe(!stops);
    }
  });

  test('End switch open: brown L, valve open, grey L, orange 0; bridging grey to orange proves it', () => {
    const visit = visitTo(on, ['water-valve: end switch open']);
    visit.set(call.water);
    expectFinds(visit, {
      'tester water-valve/brown spur/N': 230,
      'stands water-valve': 'open',
      'tester water-valve/grey spur/N': 230,
      'tester water-valve/orange spur/N': 0,
      'works boiler': false,
    });
    visit.set({ supply: 'off' }).do((setup) => bridge(setup, 'water-valve/grey', 'water-valve/orange'));
    visit.set({ supply: 'on' });
    expectFinds(visit, { 'works boiler': true });
  });

  test('Cut-out tripped: resetting it brings the hot water back, and says nothing of why it tripped', () => {
    const visit = visitTo(on, []);
    visit.set({ ...call.water, 'cut-out': 'tripped' });
    visit.do(resetCutOut);
    expectFinds(visit, { 'tester cut-out/OUT spur/N': 230, 'works boiler': true });
  });
});
