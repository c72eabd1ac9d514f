import { expect, test } from 'vitest';
import { restsFrom } from '../../src/course/rests.ts';
import { evaluate, nextPlaces } from '../../src/engine/circuit/plain.ts';
import { configKey, explorePlain } from '../../src/engine/explore/plain.ts';
import { bitsOf, partNamed, positionOf } from '../../src/engine/model/system.ts';
import { small } from './items/circuit-support.ts';
import { shelf } from './items/support.ts';

test('in a place of rest no valve moves, and the plain exploration from cold knows it', () => {
  for (const id of small) {
    const { system, right } = shelf.layout(id);
    for (const { wires } of right) {
      const { judged } = explorePlain(system, wires);
      for (let inputs = 0; inputs < 1 << system.inputs.length; inputs++) {
        const rests = restsFrom(system, wires, inputs, [0]);
        expect(rests.length, id).toBeGreaterThan(0);
        for (const place of rests) {
          const config = { inputs, place };
          expect(nextPlaces(system, evaluate(system, wires, config), place), id).toEqual([]);
          expect(judged.has(configKey(system, config)), id).toBe(true);
        }
      }
    }
  }
});

// Published: energycontrols2.fsnet.co.uk ("3 port valves") and next.gr ("mid position valve").
test('a mid-position valve stays at the radiators when the room is satisfied, and goes back for hot water alone', () => {
  const { system, right } = shelf.layout('three-port');
  const wires = right[0]?.wires ?? [];
  const rests = (settings: Record<string, string>, from: number) =>
    restsFrom(system, wires, bitsOf(system, { supply: 'on', ...settings }), [from]);
  const at = (place: number | undefined) => positionOf(system, partNamed(system, 'three-port'), place ?? -1);
  const heating = rests({ heating: 'on', room: 'calling' }, 0);
  expect(heating.map(at)).toEqual(['A']);
  const satisfied = rests({ heating: 'on', room: 'satisfied' }, heating[0] ?? 0);
  expect(satisfied.map(at)).toEqual(['A']);
  expect(rests({ 'hot-water': 'on', cylinder: 'calling' }, satisfied[0] ?? 0).map(at)).toEqual(['B']);
});

test('where the valve comes to rest depends on where it came from', () => {
  const { system, right } = shelf.layout('three-port');
  const inputs = bitsOf(system, { supply: 'on', heating: 'on', room: 'satisfied' });
  expect(restsFrom(system, right[0]?.wires ?? [], inputs, [0, 2]).toSorted()).toEqual([0, 2]);
});

// A classic mistake of the layout: at mid the motor's feed meets neutral, and nothing holds the valve.
test('a valve that hunts comes to rest nowhere', () => {
  const { system, wrong } = shelf.layout('three-port');
  const wires = wrong.find(({ id }) => id === 'grey-on-neutral')?.wires ?? [];
  const call = { supply: 'on', heating: 'on', room: 'calling' };
  expect(restsFrom(system, wires, bitsOf(system, call), [0])).toEqual([]);
});
