/** Rows of the course's fault table about neutrals: common practice, in the table's own words. */
import { expect, test } from 'vitest';
import { measure } from '../../../src/engine/meter/measure.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { configOf, reference, rewire, settings, system } from './system.ts';

const volts = (
  wires: readonly Wire[],
  a: string,
  b: string,
  asked: keyof typeof settings = 'idle',
  at = 'B',
) => {
  const read = measure(system, wires, configOf(settings[asked], { 'three-port': at })).volts(a, b);
  return read === 'floating' ? read : read.volts;
};

test('open neutral: line to earth 230, line to neutral low at the strip', () => {
  const wires = rewire(['spur/N']);
  expect(volts(wires, 'strip/1', 'strip/12')).toBe(230);
  expect(volts(wires, 'strip/1', 'strip/11')).toBeLessThan(5);
});

test('lost neutral: the neutral of the device rises to 230 to earth while a load is on', () => {
  const wires = rewire(['boiler/N']);
  expect(volts(wires, 'boiler/L', 'boiler/E')).toBe(230);
  expect(volts(wires, 'boiler/L', 'boiler/N')).toBeLessThan(5);
  expect(volts(wires, 'boiler/N', 'boiler/E')).toBeGreaterThan(225);
  expect(volts(reference, 'boiler/N', 'boiler/E')).toBe(0);
});

test('with no load on, a lost neutral floats instead', () => {
  // Boiler line and switched line off too: nothing ties its neutral to anything.
  const wires = rewire(['boiler/N', 'boiler/L', 'boiler/SL']);
  expect(volts(wires, 'boiler/N', 'boiler/E')).toBe('floating');
});

test('lost neutral: line to neutral is depressed where another load still leads on to neutral', () => {
  // The boiler's neutral gone, its switched line tied down through the pump: the electronics share the supply with
  // 105.8 kΩ and 882 Ω, so they get 378 / (378 + 105,800 + 882) of it: 0.8 V.
  const wires = rewire(['boiler/N']);
  expect(volts(wires, 'boiler/L', 'boiler/N')).toBeCloseTo((230 * 378) / (378 + 105_800 + 882), 2);
});

test('two loads in series share the volts', () => {
  const wires: Wire[] = [
    ['spur/L', 'pump/L'],
    ['pump/N', 'boiler/L'],
    ['boiler/N', 'spur/N'],
  ];
  const [pump, boiler] = [volts(wires, 'pump/L', 'pump/N'), volts(wires, 'boiler/L', 'boiler/N')];
  expect(pump).toBeCloseTo((230 * 882) / 1260, 6);
  expect(boiler).toBeCloseTo((230 * 378) / 1260, 6);
});

test('two equal valve motors in series get half each', () => {
  const wires: Wire[] = [
    ['spur/L', 'two-port/brown'],
    ['two-port/blue', 'three-port/white'],
    ['three-port/blue', 'spur/N'],
  ];
  expect(volts(wires, 'two-port/brown', 'two-port/blue')).toBeCloseTo(115, 6);
  expect(volts(wires, 'three-port/white', 'three-port/blue')).toBeCloseTo(115, 6);
});

test('neutral missing at a valve only: its live reads 230 to earth, 0 to its own neutral, and other devices are fine', () => {
  const wires = rewire(['two-port/blue']);
  expect(volts(wires, 'two-port/brown', 'strip/12', 'water')).toBe(230);
  expect(volts(wires, 'two-port/brown', 'two-port/blue', 'water')).toBeCloseTo(0, 6);
  expect(volts(wires, 'boiler/L', 'boiler/N', 'water')).toBe(230);
});

test('live and neutral reversed: line to earth 0, neutral to earth 230', () => {
  const wires = rewire(['spur/L', 'spur/N'], { 'strip/1': 'spur/N', 'strip/11': 'spur/L' });
  expect(volts(wires, 'boiler/L', 'boiler/E')).toBe(0);
  expect(volts(wires, 'boiler/N', 'boiler/E')).toBe(230);
});
