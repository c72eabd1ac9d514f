import { describe, expect, test } from 'vitest';
import { closedContacts } from '../../../src/engine/circuit/plain.ts';
import { failPlace, failSystem } from '../../../src/engine/faults/apply.ts';
import { allFailures, compatible, failureId, sayFailure } from '../../../src/engine/faults/failure.ts';
import type { Settings } from '../../../src/engine/model/system.ts';
import { right, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { placeOf } from '../support/places.ts';
import { named, type Observed, observe } from './failed.ts';

const off: Settings = { supply: 'off' };
const on: Settings = { supply: 'on' };
const water: Settings = { ...on, 'hot-water': 'on', cylinder: 'calling' };
const heating: Settings = { ...on, heating: 'on', room: 'calling' };
const both: Settings = { ...water, ...heating };

type Case = readonly [
  id: string,
  settings: Settings,
  positions: Readonly<Record<string, string>>,
  see: (seen: Observed) => string | boolean,
  healthy: string | boolean,
  failed: string | boolean,
];

const live = (terminal: string) => (seen: Observed) => seen.live(terminal);
const rests = (valve: string) => (seen: Observed) => seen.rests(valve);
const heats = (part: string) => (seen: Observed) => seen.heats(part);
const fires = (seen: Observed) => seen.fires();
const threePort = rests('three-port');
const twoPort = rests('two-port');

/** A row for every way in which every part of the unvented three-port fails: what is seen then, and what before. */
const cases: readonly Case[] = [
  ['spur: fuse blown', on, {}, live('boiler/L'), true, false],
  ['spur: neutral lost', on, {}, (seen) => seen.works('boiler', 'electronics'), true, false],

  // With the cylinder calling: while it is satisfied, hot-water-off reaches hot-water-on back through its contact.
  [
    'programmer: hot-water on welded',
    { ...on, cylinder: 'calling' },
    {},
    live('programmer/HW-ON'),
    false,
    true,
  ],
  ['programmer: hot-water on open', water, {}, live('programmer/HW-ON'), true, false],
  ['programmer: hot-water off welded', water, {}, live('programmer/HW-OFF'), false, true],
  ['programmer: hot-water off open', on, {}, live('programmer/HW-OFF'), true, false],
  ['programmer: heating on welded', on, {}, live('programmer/CH-ON'), false, true],
  ['programmer: heating on open', heating, {}, live('programmer/CH-ON'), true, false],
  ['programmer: heating off welded', heating, {}, live('programmer/CH-OFF'), false, true],
  ['programmer: heating off open', on, {}, live('programmer/CH-OFF'), true, false],

  ['room-stat: welded calling', { ...heating, room: 'satisfied' }, {}, live('three-port/white'), false, true],
  ['room-stat: welded satisfied', heating, {}, live('room-stat/SAT'), false, true],
  ['room-stat: call open', heating, {}, live('three-port/white'), true, false],
  ['room-stat: satisfied open', { ...heating, room: 'satisfied' }, {}, live('room-stat/SAT'), true, false],
  ['cyl-stat: welded calling', { ...water, cylinder: 'satisfied' }, {}, live('cut-out/IN'), false, true],
  ['cyl-stat: welded satisfied', water, {}, live('three-port/grey'), false, true],
  ['cyl-stat: call open', water, {}, live('cut-out/IN'), true, false],
  ['cyl-stat: satisfied open', { ...water, cylinder: 'satisfied' }, {}, live('three-port/grey'), true, false],
  ['cut-out: failed closed', { ...water, 'cut-out': 'tripped' }, {}, live('two-port/brown'), false, true],
  ['cut-out: failed open', water, {}, live('two-port/brown'), true, false],

  ['three-port: motor dead', heating, {}, threePort, 'A', 'B'],
  ['three-port: stuck at B', heating, {}, threePort, 'A', 'B'],
  ['three-port: stuck at mid', off, {}, threePort, 'B', 'mid'],
  ['three-port: stuck at A', off, {}, threePort, 'B', 'A'],
  ['three-port: passing', off, {}, heats('radiators'), false, true],
  ['three-port: spring broken', off, { 'three-port': 'A' }, threePort, 'B', 'A'],
  // Without the half wave nothing holds the valve at mid, so it hunts; with a short across the diode it is driven on.
  ['three-port: diode open', both, {}, threePort, 'mid', ''],
  ['three-port: diode short', both, {}, threePort, 'mid', ''],
  // Switch 1 hands the motor from white to grey: welded at rest, white drives it past mid; operated, grey moves it alone.
  ['three-port: switch 1 welded at rest', both, {}, threePort, 'mid', 'A'],
  ['three-port: switch 1 welded operated', on, {}, threePort, 'B', 'A'],
  ['three-port: switch 1 open at rest', both, {}, threePort, 'mid', 'B'],
  ['three-port: switch 1 open operated', heating, {}, threePort, 'A', 'mid'],
  ['three-port: switch 2 welded at rest', heating, { 'three-port': 'A' }, live('boiler/SL'), true, false],
  ['three-port: switch 2 welded operated', heating, {}, live('boiler/SL'), false, true],
  ['three-port: switch 2 open at rest', both, {}, threePort, 'mid', ''],
  ['three-port: switch 2 open operated', heating, { 'three-port': 'A' }, live('boiler/SL'), true, false],
  ['three-port: live case', heating, {}, live('three-port/earth'), false, true],

  ['two-port: motor dead', water, {}, twoPort, 'open', 'shut'],
  ['two-port: stuck shut', water, {}, twoPort, 'open', 'shut'],
  ['two-port: stuck part open', off, {}, twoPort, 'shut', 'part open'],
  ['two-port: stuck open', off, {}, twoPort, 'shut', 'open'],
  ['two-port: passing', off, {}, heats('coil'), false, true],
  ['two-port: spring broken', off, { 'two-port': 'open' }, twoPort, 'shut', 'open'],
  ['two-port: end switch welded', on, {}, live('two-port/orange'), false, true],
  ['two-port: end switch open', water, { 'two-port': 'open' }, live('two-port/orange'), true, false],
  ['two-port: live case', water, {}, live('two-port/earth'), false, true],

  ['pump: dead', water, { 'two-port': 'open' }, (seen) => seen.works('pump', 'motor'), true, false],
  ['pump: live case', water, { 'two-port': 'open' }, live('pump/E'), false, true],
  ['boiler: fires by itself', on, {}, fires, false, true],
  ['boiler: does not fire', water, { 'two-port': 'open' }, fires, true, false],
  ['boiler: live case', on, {}, live('boiler/E'), false, true],
];

describe('every way in which every part fails does what it says', () => {
  test.each(cases)('%s', (id, settings, positions, see, healthy, failed) => {
    expect(see(observe(system, right, [], settings, positions))).toBe(healthy);
    expect(see(observe(system, right, named(system, right, id), settings, positions))).toBe(failed);
  });

  test('no way to fail is left out', () => {
    const all = allFailures(system, []).map((failure) => failureId(system, failure));
    expect(cases.map(([id]) => id)).toEqual(all);
  });
});

test('a spring that is broken still lets the motor open the valve', () => {
  const seen = observe(system, right, named(system, right, 'two-port: spring broken'), water, {});
  expect(seen.rests('two-port')).toBe('open');
});

test('a boiler that fires by itself does not fire without its permanent line', () => {
  const seen = (settings: Settings) =>
    observe(system, right, named(system, right, 'boiler: fires by itself'), settings, {});
  expect(seen(off).fires()).toBe(false);
});

test('a broken wire cuts off what it fed, and nothing else', () => {
  const broken = named(system, right, 'wire: programmer/HW-ON strip/4');
  const seen = observe(system, right, broken, water, {});
  expect([seen.live('programmer/HW-ON'), seen.live('cyl-stat/COM')]).toEqual([true, false]);
  expect(allFailures(system, right).length).toBe(cases.length + right.length);
});

test('two failures of one part are both there', () => {
  const ids = ['two-port: passing', 'two-port: end switch welded', 'two-port: spring broken'];
  const seen = observe(system, right, named(system, right, ...ids), on, { 'two-port': 'open' });
  expect(seen.rests('two-port')).toBe('open');
  const shut = observe(system, right, named(system, right, ...ids), on, {});
  expect([shut.heats('coil'), shut.live('two-port/orange')]).toEqual([true, true]);
});

test('a failed contact stays as it is in every state, and every other contact is as before', () => {
  for (const failure of allFailures(system, [])) {
    if ('wire' in failure) throw new Error('a wire where there are none');
    const failed = failSystem(system, [failure]);
    const { spec, part } = failure;
    for (let place = 0; place < system.places; place++) {
      for (let inputs = 0; inputs < 1 << system.inputs.length; inputs++) {
        const config = { inputs, place };
        const before = closedContacts(system, config);
        const expected = system.contacts.map((contact, c) => {
          const stays = contact.part === part ? spec.contacts?.[contact.spec.id] : undefined;
          return stays ? stays === 'closed' : must(before[c]);
        });
        const added = failed.contacts.slice(system.contacts.length).map(() => true);
        expect(closedContacts(failed, config)).toEqual([...expected, ...added]);
      }
    }
  }
});

test('a healthy system is not touched by failing it', () => {
  expect(failSystem(system, [])).toBe(system);
  const before = observe(system, right, [], water, {}).rests('two-port');
  for (const failure of allFailures(system, right)) failSystem(system, [failure]);
  expect(observe(system, right, [], water, {}).rests('two-port')).toBe(before);
});

test('a stuck valve stands where it is stuck, wherever the others stand', () => {
  const stuck = named(system, right, 'three-port: stuck at A', 'two-port: stuck part open');
  for (let place = 0; place < system.places; place++)
    expect(failPlace(system, stuck, place)).toBe(
      placeOf(system, { 'three-port': 'A', 'two-port': 'part open' }),
    );
  const [one] = stuck;
  expect(failPlace(system, [must(one)], placeOf(system, { 'two-port': 'open' }))).toBe(
    placeOf(system, { 'three-port': 'A', 'two-port': 'open' }),
  );
});

test('one contact is not both welded and open, and a valve is not stuck twice', () => {
  const pair = (a: string, b: string) => {
    const [one, other] = named(system, right, a, b);
    return compatible(must(one), must(other));
  };
  expect(pair('cyl-stat: welded calling', 'cyl-stat: call open')).toBe(false);
  expect(pair('cyl-stat: welded calling', 'cyl-stat: welded satisfied')).toBe(false);
  expect(pair('two-port: stuck open', 'two-port: stuck shut')).toBe(false);
  expect(pair('two-port: stuck open', 'three-port: stuck at A')).toBe(true);
  expect(pair('cyl-stat: welded calling', 'room-stat: call open')).toBe(true);
  expect(pair('two-port: stuck open', 'two-port: end switch welded')).toBe(true);
  expect(pair('wire: boiler/E strip/12', 'wire: boiler/N strip/10')).toBe(true);
});

test('failures are said as a person says them, and no two have one name', () => {
  const say = (id: string) => sayFailure(system, must(named(system, right, id)[0]));
  expect(say('two-port: passing')).toBe('the two-port valve lets by while shut');
  expect(say('wire: boiler/E strip/12')).toBe('the wire from boiler E to terminal 12 is broken');
  const ids = allFailures(system, right).map((failure) => failureId(system, failure));
  expect(new Set(ids).size).toBe(ids.length);
});
