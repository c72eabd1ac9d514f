import { describe, expect, it } from 'vitest';
import { coolDown, heatLossCoefficient } from '../../../src/engine/plant/cool-down.ts';
import { classLine, lossClass } from '../../../src/engine/plant/loss-class.ts';
import { standingLossLimit } from '../../../src/engine/plant/standing-loss.ts';

describe('the standing loss that Part L allows', () => {
  // Source: Approved Document L Volume 1, 2021 edition, Table 4.5 (primary text read).
  it.each([
    [50, 1.03],
    [100, 1.49],
    [150, 1.88],
    [200, 2.06],
    [250, 2.22],
    [300, 2.36],
    [350, 2.48],
    [400, 2.59],
    [500, 2.8],
  ])('for %i litres is the printed %f kWh in 24 h', (litres, limit) => {
    expect(standingLossLimit(litres).value).toBe(limit);
  });

  // Source: the same table, note 1 (primary text read); the value by arithmetic (derived), printed to 0.01.
  it('for a size between the rows follows note 1', () => {
    expect(standingLossLimit(210).value).toBeCloseTo(2.1, 2);
  });

  // The neighbours of a printed size can only come from the formula, so they show where table and formula agree.
  it.each([150, 200, 250, 300])('steps smoothly at %i litres, where table and formula agree', (litres) => {
    const [below, above] = [standingLossLimit(litres - 1).value, standingLossLimit(litres + 1).value];
    expect(Math.abs((below + above) / 2 - standingLossLimit(litres).value)).toBeLessThan(0.01);
  });

  it.each([
    [50, 1.36],
    [100, 1.66],
  ])('at %i litres keeps the printed value, although the formula would allow %f', (litres, formula) => {
    expect(standingLossLimit(litres + 0.001).value).toBeCloseTo(formula, 2);
    expect(standingLossLimit(litres).value).toBeLessThan(formula);
  });

  it('shows both steps of the formula', () => {
    expect(standingLossLimit(210).lines.map(({ result }) => result)).toEqual(['87.4 W', '2.10 kWh in 24 h']);
  });

  it('says what it takes for a size out of range', () => {
    expect(() => standingLossLimit(5)).toThrow('Store volume: a number from 15 to 2000 litres, not 5');
  });
});

describe('the class on the label of a store', () => {
  // Source: Regulation (EU) 812/2013 Annex II as quoted in public code (secondary); kWh by arithmetic (derived).
  it.each([
    [200, 'A+', 0.76],
    [200, 'A', 1.05],
    [200, 'B', 1.47],
    [200, 'C', 2.06],
    [200, 'D', 2.57],
    [300, 'A+', 0.87],
    [300, 'A', 1.2],
    [300, 'B', 1.68],
    [300, 'C', 2.36],
    [300, 'D', 2.93],
  ] as const)('of %i litres has the line of %s at %f kWh in 24 h', (litres, letter, kWh) => {
    expect((classLine(letter, litres) * 24) / 1000).toBeCloseTo(kWh, 2);
  });

  it('is the best whose line the loss stays under, and G beyond them all', () => {
    const line = classLine('B', 210);
    expect([lossClass(line - 0.1, 210), lossClass(line, 210), lossClass(1000, 210)]).toEqual(['B', 'C', 'G']);
  });
});

describe('a store left to cool', () => {
  // Source: from the Part L limits at 45 K (derived; 45 K itself from public notes on Regulation 812/2013).
  it.each([
    [150, 1.74],
    [200, 1.91],
    [210, 1.94],
    [250, 2.06],
    [300, 2.18],
  ])('of %i litres at the limit loses %f W for each kelvin', (litres, coefficient) => {
    // Tolerance: half of the last place here, and as much again for the limit printed to 0.01 kWh.
    const { value } = heatLossCoefficient(standingLossLimit(litres).value);
    expect(Math.abs(value - coefficient)).toBeLessThan(0.01);
  });

  it.each([
    [150, 10.8],
    [200, 8.9],
    [250, 7.6],
    [300, 6.8],
  ])('of %i litres at the limit cools by %f K in the first day', (litres, kelvin) => {
    expect(coolDown(litres, standingLossLimit(litres).value).value).toBeCloseTo(kelvin, 1);
  });

  it('says what it takes for a loss that no store has', () => {
    expect(() => heatLossCoefficient(0)).toThrow(RangeError);
    expect(() => coolDown(200, -1)).toThrow('Standing loss: a number from 0.1 to 50 kWh in 24 h, not -1');
  });
});
