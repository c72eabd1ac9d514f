import { describe, expect, test } from 'vitest';
import type { Item } from '../../../src/course/item.ts';
import { sum } from '../../../src/course/items/sum.ts';
import { sums } from '../../../src/course/items/sums/index.ts';
import type { Level } from '../../../src/course/task.ts';
import { shelf } from './support.ts';

const SEEDS = 60_000;

/** The first variant that asks with these numbers. */
function asked(id: string, level: Level, ...words: string[]): Item {
  for (let seed = 0; seed < SEEDS; seed++) {
    const item = sum.make(shelf, { make: 'sum', sum: id }, seed, level);
    if (item && words.every((word) => item.ask.includes(word))) return item;
  }
  throw new Error(`no ${id} with ${words.join(', ')}`);
}
const judged = (item: Item, typed: string) => item.judge({ kind: 'number', typed });

// Approved Document G, 2015 edition with 2016 amendments: Table 3.1 and its worked example (7 m, 4 elbows, G 1/2).
// 6 m with 6 elbows: Level 3 textbook of 2019, p. 416. The G 3/4 row at its limit: from Table 3.1.
test('discharge pipes come out as in the published examples', () => {
  expect(judged(asked('discharge-pipe-length', 1, '22 mm', '4 elbows'), '5.8 m').right).toBe(true);
  expect(judged(asked('discharge-pipe-length', 1, '28 mm', '4 elbows'), '14 m').right).toBe(true);
  expect(judged(asked('pipe-elbows', 1, '22 mm', 'runs 7 m', '4 elbows'), '10.2 m').right).toBe(true);
  for (const [level, outlet, run] of [
    [1, 'G 1/2', '7 m with 4 elbows'],
    [1, 'G 1/2', '6 m with 6 elbows'],
    [1, 'G 1/2', '9 m with 5 elbows'],
    [2, 'G 3/4', '6 m with 3 elbows'],
  ] as const)
    expect(judged(asked('discharge-pipe-size', level, outlet, `run ${run}`), '28 mm').right).toBe(true);
});

test('elbows forgotten are told as such: 22 mm for 7 m with 4 elbows', () => {
  const { right, notes } = judged(asked('discharge-pipe-size', 1, 'run 7 m with 4 elbows'), '22 mm');
  expect(right).toBe(false);
  expect(notes[0]?.cause).toBe(
    '22 mm would do for 7 m of straight pipe. With 4 elbows it counts as 10.2 m, and 9 m is the limit.',
  );
});

// Growth of water by IAPWS-95, vessel by Boyle with 1.013 bar of air: the shared facts, F1 and F2. 9.0 L is their
// “wrong-way trap”: gauge pressures put in as they are.
test('growth and vessel of 210 litres come out as computed from IAPWS-95', () => {
  expect(judged(asked('expansion', 1, '210 litres', 'to 65 °C'), '4.10 L').right).toBe(true);
  const vessel = asked('vessel', 1, '210 litres');
  expect(judged(vessel, '10.7 L').right).toBe(true);
  expect(judged(asked('vessel', 1, '300 litres'), '15.2 L').right).toBe(true);
  expect(judged(vessel, '9.0 L').notes[0]?.cause).toContain('as the gauge shows them');
});

// Level 3 textbook of 2019, p. 412, with its figures taken as gauge pressures: 4.0 bar; taken as absolute: 3 bar.
test('half a vessel of 18 litres filled from 1.5 bar gives 4.0 bar on the gauge, and 3 bar is the known slip', () => {
  const item = asked('gas-pressure', 1, '18 litres', '1.5 bar', 'Then 9 litres');
  expect(judged(item, '4.0 bar').right).toBe(true);
  expect(judged(item, '3 bar').notes[0]?.cause).toContain('as the gauge shows it');
});

// 85.3 kW: a calorifier supplier’s published example. 12.20 kWh, 243.9 and 36.6 min: IAPWS-95, no losses (the shared
// facts, F3). Flows: arithmetic there.
test('heating a store comes out as in the published examples', () => {
  expect(
    judged(asked('heat-power', 3, '1000 litres', 'from 5 to 60', 'in 45 minutes'), '85.3 kW').right,
  ).toBe(true);
  expect(judged(asked('heat-energy', 1, '210 litres', 'to 60 °C'), '12.20 kWh').right).toBe(true);
  const reheat = asked('reheat-time', 1, '210 litres', 'to 60 °C', 'by 3 kW');
  expect(judged(reheat, '243.9 min').right).toBe(true);
  expect(judged(reheat, '4.07 min').notes[0]?.cause).toContain('in hours');
  expect(judged(asked('reheat-time', 1, '210 litres', 'to 60 °C', 'by 20 kW'), '36.6 min').right).toBe(true);
  expect(judged(asked('flow-rate', 2, 'gives 24 kW', '20 K'), '17.2 L/min').right).toBe(true);
  expect(judged(asked('flow-rate', 2, 'gives 24 kW', '11 K'), '31.3 L/min').right).toBe(true);
});

// 217 W, 0.94 A; 0.520 Ω and 0.52 V for 10 m of 0.75 mm²; 0.44 V for 20 m of 1.0 mm² at 0.5 A; 30.20 mΩ for each metre
// of 1.5 with 1.0 mm²: the shared facts, C1 to C4 (IEC 60228, BS 7671 Appendix 4 and the On-Site Guide as quoted).
test('currents, drops and resistances come out as in the published checks', () => {
  const fuse = asked(
    'fuse-current',
    1,
    'boiler of 140 W',
    'pump of 60 W',
    'valves of 6 W',
    'programmer of 5 W',
  );
  expect(judged(fuse, '0.94 A').right).toBe(true);
  const drop = asked('volt-drop', 1, 'runs 10 m', 'takes 1 A');
  expect(judged(drop, '0.52 V').right).toBe(true);
  expect(judged(drop, '0.26 V').notes[0]?.cause).toContain('one way');
  expect(judged(asked('table-drop', 2, 'of 1 mm²', 'runs 20 m', 'carries 0.5 A'), '0.44 V').right).toBe(true);
  expect(judged(asked('r1-plus-r2', 1, 'runs 10 m', '1.5 mm²', 'earth 1 mm²'), '0.302 Ω').right).toBe(true);
  expect(judged(asked('loop-resistance', 1, 'reads 1 Ω', 'there 10 m'), '1.52 ohms').right).toBe(true);
});

describe.each(sums.map((one) => [one.id, one] as const))('%s', (id) => {
  const items = Array.from({ length: 90 }, (_, seed) =>
    sum.make(shelf, { make: 'sum', sum: id }, seed, ((seed % 3) + 1) as Level),
  ).filter((item) => item !== undefined);

  test('its own answer is right, in another spelling of the unit too, and a number without a unit is not', () => {
    for (const item of items) {
      if (item.form.kind !== 'number' || item.answer.kind !== 'number') throw new Error('a number');
      const number = item.answer.typed.split(' ')[0] ?? '';
      expect(item.judge(item.answer).right, item.id).toBe(true);
      expect(judged(item, `${number}${item.form.accepts[1]}`).right).toBe(true);
      expect(judged(item, number).right).toBe(false);
      expect(item.steps.at(-1)).toContain(item.form.unit);
    }
  });

  test('its numbers differ from seed to seed, and the same seed asks the same', () => {
    expect(new Set(items.map(({ ask }) => ask)).size).toBeGreaterThan(30);
    const again = sum.make(shelf, { make: 'sum', sum: id }, 5, 2);
    expect(again?.ask).toBe(sum.make(shelf, { make: 'sum', sum: id }, 5, 2)?.ask);
  });
});

test('a sum that is not there is named', () => {
  expect(() => sum.make(shelf, { make: 'sum', sum: 'tea' }, 1, 1)).toThrow('found "tea"');
});
