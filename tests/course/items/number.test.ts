import { expect, test } from 'vitest';
import { judgeNumber, type NumberTask, readQuantity } from '../../../src/course/items/number.ts';

const value = (typed: string, ...units: string[]) => readQuantity(typed, units);

test('a number and its unit are read with or without a space, in capitals or not', () => {
  for (const typed of ['28 mm', '28mm', ' 28  MM ', '28 mm.', '28.0 mm', '+28 mm'])
    expect(value(typed, 'mm'), typed).toEqual({ kind: 'value', value: 28 });
  expect(value('-1.5 °C', '°C')).toEqual({ kind: 'value', value: -1.5 });
  expect(value('−1.5 °C', '°C')).toEqual({ kind: 'value', value: -1.5 });
  expect(value('.5 V', 'V')).toEqual({ kind: 'value', value: 0.5 });
});

test('a comma is a decimal point, but three figures after it are thousands', () => {
  expect(value('0,5 V', 'V')).toEqual({ kind: 'value', value: 0.5 });
  expect(value('0,500 V', 'V')).toEqual({ kind: 'value', value: 0.5 });
  expect(value('10,25 V', 'V')).toEqual({ kind: 'value', value: 10.25 });
  expect(value('1,000 W', 'W')).toEqual({ kind: 'value', value: 1000 });
  expect(value('12 500 W', 'W')).toEqual({ kind: 'value', value: 12_500 });
  expect(value('1,234,567.8 J', 'J')).toEqual({ kind: 'value', value: 1_234_567.8 });
});

test('points in the name of a unit do not matter', () => {
  for (const typed of ['230 V a.c.', '230 V ac', '230 v AC.'])
    expect(value(typed, 'V', 'V a.c.'), typed).toEqual({ kind: 'value', value: 230 });
});

test('what is no number, has no unit or another unit is told apart', () => {
  for (const typed of ['', 'mm', 'about 28 mm', '1.2.3 mm', '12,34,5 mm', '--3 mm'])
    expect(value(typed, 'mm').kind, typed).toBe('no-number');
  expect(value('28', 'mm')).toEqual({ kind: 'no-unit', value: 28 });
  expect(value('28.', 'mm')).toEqual({ kind: 'no-unit', value: 28 });
  expect(value('2.8 cm', 'mm')).toEqual({ kind: 'other-unit', value: 2.8, unit: 'cm' });
  // Some sums have no unit: a count of elbows.
  expect(value('4', 'elbows', '')).toEqual({ kind: 'value', value: 4 });
});

const task: NumberTask = {
  unit: 'L',
  accepts: ['L', 'litres'],
  value: 10.7,
  tolerance: 0.2,
  slips: [
    { value: 9, cause: 'Gauge for absolute.', consequence: 'Too small a vessel.', look: 'Add 1 bar.' },
    // So near the right value that it cannot be told from it.
    { value: 10.8, cause: 'Never said.', consequence: 'Never said.', look: 'Never said.' },
  ],
  wrong: (given) => ({ cause: `Not ${given} L.`, consequence: 'Wrong vessel.', look: 'Look again.' }),
};

test('a figure within the tolerance is right, and a known slip is told as that slip', () => {
  for (const typed of ['10.7 L', '10.5 litres', '10.9 L', '10.8 L'])
    expect(judgeNumber(typed, task), typed).toEqual({ right: true, notes: [] });
  expect(judgeNumber('9 L', task).notes[0]?.cause).toBe('Gauge for absolute.');
  expect(judgeNumber('9.1 L', task).notes[0]?.cause).toBe('Gauge for absolute.');
  expect(judgeNumber('12 L', task).notes[0]?.cause).toBe('Not 12 L.');
});

test('the right figure without its unit is not right, and the note names what was typed', () => {
  for (const [typed, says] of [
    ['10.7', 'has no unit'],
    ['10.7 ml', 'is in “ml”, and L is asked'],
    ['ten', '“ten” is not a number'],
  ] as const) {
    const { right, notes } = judgeNumber(typed, task);
    expect(right).toBe(false);
    expect(notes[0]?.cause).toContain(says);
  }
});
