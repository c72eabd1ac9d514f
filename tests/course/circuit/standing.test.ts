import { expect, test } from 'vitest';
import {
  callOf,
  isShorted,
  pickState,
  pickWiring,
  settled,
  stand,
} from '../../../src/course/circuit/standing.ts';
import { findsNothing } from '../../../src/course/circuit/volts.ts';
import { makeRandom } from '../../../src/course/random.ts';
import { configKey, explorePlain } from '../../../src/engine/explore/plain.ts';
import { bitsOf, holds, isCalled } from '../../../src/engine/model/system.ts';
import { small } from '../items/circuit-support.ts';
import { shelf } from '../items/support.ts';

test('a state that is dealt is one that the plain exploration from cold reaches, in right and wrong wirings', () => {
  for (const id of small) {
    const layout = shelf.layout(id);
    const random = makeRandom(7);
    for (let k = 0; k < 12; k++) {
      const { wires } = pickWiring(layout, random, 3);
      const standing = pickState(layout, wires, random, ((k % 3) + 1) as 1 | 2 | 3);
      if (!standing) continue;
      const { judged } = explorePlain(layout.system, wires);
      expect(judged.has(configKey(layout.system, standing.config)), `${id} ${k}`).toBe(true);
    }
  }
});

test('the settings of a call call it', () => {
  for (const id of shelf.layoutIds) {
    const { system } = shelf.layout(id);
    for (const demand of system.spec.demands)
      expect(isCalled(system, callOf(system, demand), demand), `${id} ${demand.says}`).toBe(true);
  }
});

test('on level 1 and 2 every wiring is right; on level 3 some are classic mistakes, with their names', () => {
  const layout = shelf.layout('three-port');
  const dealt = (level: 1 | 2 | 3) =>
    Array.from({ length: 60 }, (_, seed) => pickWiring(layout, makeRandom(seed), level));
  for (const level of [1, 2] as const)
    for (const { wires, mistake } of dealt(level)) {
      expect(mistake).toBeUndefined();
      expect(layout.right.some((right) => right.wires === wires)).toBe(true);
    }
  const named = dealt(3).flatMap(({ mistake }) => mistake ?? []);
  expect(named.length).toBeGreaterThan(8);
  expect(named.length).toBeLessThan(35);
});

test('a line joined to neutral is a short', () => {
  const layout = shelf.layout('three-port');
  const wires = layout.right[0]?.wires ?? [];
  const config = { inputs: bitsOf(layout.system, { supply: 'on' }), place: 0 };
  expect(isShorted(stand(layout, wires, config))).toBe(false);
  expect(isShorted(stand(layout, [...wires, ['spur/L', 'spur/N']], config))).toBe(true);
});

// The circuit of the valve (published analyses: energycontrols2.fsnet.co.uk "3 port valves", next.gr "mid position
// valve"): at mid, switch 1 joins grey to the motor, which half a wave reaches through the diode.
test('grey at mid is not joined to line, yet a tester finds something there: it is called neither live nor dead', () => {
  const layout = shelf.layout('three-port');
  const { system } = layout;
  const wires = layout.right[0]?.wires ?? [];
  const inputs = bitsOf(system, {
    supply: 'on',
    'hot-water': 'on',
    heating: 'on',
    room: 'calling',
    cylinder: 'calling',
  });
  const place = settled(system, wires, inputs, 0) ?? -1;
  const standing = stand(layout, wires, { inputs, place });
  const grey = system.nodeOf.get('three-port/grey') ?? -1;
  expect(standing.live.line[grey]).toBe(false);
  expect(findsNothing(standing)(grey)).toBe(false);
  expect(findsNothing(standing)(system.nodeOf.get('three-port/blue') ?? -1)).toBe(true);
});

test('a call that does not hold with the supply off is not settled anywhere but at rest', () => {
  const { system, right } = shelf.layout('three-port');
  const wires = right[0]?.wires ?? [];
  for (const demand of system.spec.demands) {
    const off = callOf(system, demand) & ~1;
    expect(holds(system, off, { supply: 'on' })).toBe(false);
    for (let from = 0; from < system.places; from++) expect(settled(system, wires, off, from)).toBe(0);
  }
});
