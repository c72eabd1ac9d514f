import { expect, test } from 'vitest';
import { gateAt, shoeAt } from '../../../src/ui/plant/figure.ts';
import { describeHeat, heatOf, waterIn } from '../../../src/ui/plant/heat.ts';
import { layOut } from '../../../src/ui/plant/layout.ts';
import { placeOf, systemNamed } from './loops.ts';

const flagship = systemNamed('unvented-three-port');
const at = (threePort: string, twoPort: string) =>
  placeOf(flagship, { 'three-port': threePort, 'two-port': twoPort });
const partAt = (id: string) => {
  const part = flagship.parts.find((one) => one.id === id);
  if (!part) throw new Error(id);
  return part;
};

// The ports as the trade names them (common practice): B to the cylinder, A to the radiators.
test.each([
  [
    'mid',
    'open',
    true,
    true,
    'The boiler fires and the pump runs. Heat goes to the cylinder and the radiators.',
  ],
  ['mid', 'shut', false, false, 'Nothing fires. The way to the cylinder is shut at the two-port.'],
  [
    'B',
    'open',
    true,
    true,
    'The boiler fires and the pump runs. Heat goes to the cylinder. The way to the radiators is shut at the three-port.',
  ],
  [
    'A',
    'shut',
    true,
    true,
    'The boiler fires and the pump runs. Heat goes to the radiators. The way to the cylinder is shut at the three-port and the two-port.',
  ],
  [
    'B',
    'shut',
    true,
    true,
    'The boiler fires and the pump runs, but every way is shut. The way to the cylinder is shut at the two-port, and to the radiators at the three-port.',
  ],
  ['mid', 'open', false, true, 'Nothing fires. The pump runs.'],
  ['mid', 'part open', true, false, 'The boiler fires but the pump stands still, so the heat goes nowhere.'],
])(
  'three-port at %s, two-port %s, fires %s, pumps %s, in words',
  (threePort, twoPort, fires, pumps, words) => {
    expect(describeHeat(flagship, at(threePort, twoPort), fires, pumps)).toBe(words);
  },
);

test('hot water reaches a taker by the flow and leaves by the return, and no further than a shut valve', () => {
  const { runs } = layOut(flagship);
  const heat = heatOf(flagship, at('A', 'shut'), true, true);
  const waters = (id: string) =>
    new Set(runs.filter(({ serves }) => serves.join() === id).map((run) => waterIn(run, heat)));
  expect(waters('radiators')).toEqual(new Set(['hot', 'return']));
  expect(waters('coil')).toEqual(new Set(['still']));
});

test('without the pump all water is still; without fire it moves unheated', () => {
  const { runs } = layOut(flagship);
  const all = (fires: boolean, pumps: boolean) =>
    new Set(runs.map((run) => waterIn(run, heatOf(flagship, at('mid', 'open'), fires, pumps))));
  expect(all(true, false)).toEqual(new Set(['still']));
  expect(all(false, true)).toEqual(new Set(['moving']));
});

test('the shoe stands on the port that is shut, and travels smoothly between', () => {
  const { kind } = partAt('three-port');
  expect([0, 0.5, 1, 1.5, 2].map((position) => shoeAt(kind, 'A', position))).toEqual([-1, -0.5, 0, 0.5, 1]);
  expect(shoeAt(kind, 'B', 0)).toBe(1);
});

test('the gate lifts from shut to open and no further', () => {
  const { kind } = partAt('two-port');
  expect([0, 1, 2, 2.4].map((position) => gateAt(kind, position))).toEqual([0, 0.5, 1, 1]);
});
