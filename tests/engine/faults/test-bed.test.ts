import { expect, test } from 'vitest';
import { compatible, failureId } from '../../../src/engine/faults/failure.ts';
import type { Hazard } from '../../../src/engine/faults/hazard.ts';
import { hazards } from '../../../src/engine/faults/hazards/index.ts';
import { layersOf } from '../../../src/engine/faults/layers.ts';
import { makeTestBed, restPlaces } from '../../../src/engine/faults/test-bed.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { right, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { placeOf } from '../support/places.ts';
import { named } from './failed.ts';
import { plainSearch } from './plain-search.ts';

const liveCase = must(hazards.find(({ id }) => id === 'live-case'));

test('two broken wires are both broken: a case earthed twice is only live when both earths are lost', () => {
  const wires: Wire[] = [...right, ['boiler/E', 'pump/E']];
  const bed = makeTestBed(system, wires, liveCase, must(liveCase.watches(system)[0]));
  const strikes = plainSearch(system, wires, liveCase);
  const [touching, own, through] = named(
    system,
    wires,
    'boiler: live case',
    'wire: boiler/E strip/12',
    'wire: boiler/E pump/E',
  ).map((failure) => must(failure));
  const sets = [
    [must(touching), must(own)],
    [must(touching), must(through)],
    [must(touching), must(own), must(through)],
    // And the bed is as good as new afterwards.
    [must(touching), must(own)],
  ];
  expect(sets.map((set) => bed(set) !== undefined)).toEqual([false, false, true, false]);
  expect(sets.map((set) => strikes(set))).toEqual([false, false, true, false]);
});

test('no set asks one contact to be both welded and open', () => {
  // A hazard made for this test: the cylinder thermostat is satisfied and says nothing at either contact. "Welded
  // calling" and "call open" together would bring that about, if one contact could be both.
  const ends = ['cyl-stat/CALL', 'cyl-stat/SAT'].map((end) => must(system.nodeOf.get(end)));
  const mute: Hazard = {
    ...liveCase,
    id: 'mute',
    scope: 'rest',
    watches: () => [{ fixed: { supply: 'on', 'hot-water': 'on', cylinder: 'satisfied' }, nodes: ends }],
    there: ({ live }) => !ends.some((node) => live.line[node]),
    lanes: ({ frame, nets, sweep }, w) => {
      const lines = ends.map((node) => must(sweep.line[must(nets.of[node]) * frame.words + w]));
      return lines.reduce((left, line) => left & ~line, frame.used);
    },
  };
  const sets = layersOf(system, right, mute, 2);
  const ids = sets.map(({ failures }) => failures.map((failure) => failureId(system, failure)).join(' + '));
  expect(ids).toContain('cyl-stat: satisfied open');
  for (const { failures } of sets)
    for (const [k, one] of failures.entries())
      for (const other of failures.slice(k + 1)) expect(compatible(one, other)).toBe(true);
});

test('failures strike wherever the healthy system can stand still', () => {
  const places = (...all: Record<string, string>[]) => all.map((one) => placeOf(system, one)).sort();
  // The three-port stands over at the radiators only while hot water is not called, and then the two-port is shut.
  expect(restPlaces(system, right).sort()).toEqual(
    places(
      {},
      { 'three-port': 'mid' },
      { 'three-port': 'A' },
      { 'two-port': 'open' },
      { 'three-port': 'mid', 'two-port': 'open' },
    ),
  );
});
