import { expect, test } from 'vitest';
import type { Act } from '../../../src/engine/diagnose/act.ts';
import type { Callout } from '../../../src/engine/diagnose/callout.ts';
import { replay, standOf } from '../../../src/engine/diagnose/replay.ts';
import type { Settings } from '../../../src/engine/model/system.ts';
import { livePaths } from '../../../src/ui/callout/live-path.ts';
import { call, fault, site } from '../../engine/diagnose/callout.ts';

const where = site('three-port');
const { system, wires, bench } = where;

/** The paths on the three-port system with one fault, as a learner's page asks for them. */
function pathsWith(broken: string, found: Settings, acts: readonly Act[] = []) {
  const callout: Callout = { system, wires, fault: fault(where, broken), complaints: [], found, seed: 1 };
  const { nets } = standOf(replay(bench, callout, acts));
  const line = nets[system.supply.line];
  const live = new Map(
    system.nodes.slice(0, system.terminals).map((name, node) => [name, nets[node] === line]),
  );
  return livePaths(bench, callout, acts, live);
}
const water = { supply: 'on', ...call.water };

test('A call for hot water is followed from the supply to the boiler, terminal by terminal', () => {
  const boiler = pathsWith('pump: dead', water).find(({ to }) => to === 'boiler');
  // By hand from the drawing in content/systems/three-port.yaml, wiring "call-on-the-switched-line".
  expect(boiler?.steps.map(({ terminal }) => terminal)).toEqual([
    'spur/L',
    'strip/1',
    'programmer/L',
    'programmer/HW-ON',
    'strip/4',
    'cyl-stat/COM',
    'cyl-stat/CALL',
    'strip/6',
    'boiler/SL',
  ]);
  expect(boiler?.stops).toBeUndefined();
});

test('With a broken wire on the way, the path says where live stops, and all after it is dead', () => {
  const boiler = pathsWith('wire: cyl-stat/COM strip/4', water).find(({ to }) => to === 'boiler');
  const steps = boiler?.steps ?? [];
  expect(steps[boiler?.stops ?? -1]?.terminal).toBe('cyl-stat/COM');
  expect(steps.map(({ live }) => live)).toEqual([true, true, true, true, true, false, false, false, false]);
});

test('With nothing called, or the supply off, no part should work and there is no path', () => {
  expect(pathsWith('pump: dead', { supply: 'on', ...call.none }).map(({ to }) => to)).not.toContain('boiler');
  expect(pathsWith('pump: dead', water, [{ do: 'operate', settings: { supply: 'off' } }])).toEqual([]);
});

test('The path follows the controls that the learner has set since', () => {
  const acts: Act[] = [{ do: 'operate', settings: { ...call.heating } }];
  const boiler = pathsWith('pump: dead', water, acts).find(({ to }) => to === 'boiler');
  expect(boiler?.steps.map(({ terminal }) => terminal)).toContain('three-port/orange');
});
