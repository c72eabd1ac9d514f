import { describe, expect, it } from 'vitest';
import { density, enthalpy, growth, specificHeat } from '../../../src/engine/plant/water.ts';

// °C, density kg/m³, specific heat kJ/(kg K), enthalpy kJ/kg at 101.325 kPa, as printed to the places shown.
// Source: computed from the IAPWS-95 formulation with a public open-source property library (derived).
const IAPWS_95: [number, number, number, number][] = [
  [4, 999.97, 4.208, 16.9],
  [10, 999.7, 4.195, 42.1],
  [15, 999.1, 4.189, 63.1],
  [20, 998.21, 4.184, 84.0],
  [30, 995.65, 4.18, 125.8],
  [40, 992.22, 4.179, 167.6],
  [50, 988.04, 4.181, 209.4],
  [60, 983.2, 4.185, 251.3],
  [65, 980.55, 4.187, 272.2],
  [70, 977.76, 4.19, 293.1],
  [80, 971.79, 4.197, 335.1],
  [85, 968.61, 4.201, 356.1],
  [90, 965.31, 4.205, 377.1],
  [95, 961.89, 4.21, 398.1],
];
/** Half of the last printed place, and the error that the fits state. */
const within = (halfPlace: number, error: number) => halfPlace + error;

describe('water', () => {
  it.each(IAPWS_95)('at %i °C has the density, specific heat and enthalpy of IAPWS-95', (t, rho, cp, h) => {
    expect(Math.abs(density(t) - rho)).toBeLessThan(within(0.005, 0.005));
    expect(Math.abs(specificHeat(t) - cp)).toBeLessThan(within(0.0005, 0.001));
    expect(Math.abs(enthalpy(t) - h)).toBeLessThan(within(0.05, 0.01));
  });

  it('takes up the heat that its specific heat says, at every whole degree', () => {
    for (let t = 0; t < 100; t++) {
      const middle = specificHeat(t + 0.5);
      expect(Math.abs(enthalpy(t + 1) - enthalpy(t) - middle)).toBeLessThan(0.0005);
    }
  });

  // Source: IAPWS-95 (derived); printed to 0.01 %, so half of that is the tolerance, and 0.001 % for the fit.
  it.each([
    [10, 60, 1.68],
    [10, 65, 1.95],
    [10, 70, 2.24],
    [10, 80, 2.87],
    [10, 82, 3.01],
    [10, 90, 3.56],
    [10, 95, 3.93],
    [4, 60, 1.71],
    [4, 80, 2.9],
    [4, 90, 3.59],
    [4, 95, 3.96],
    [15, 60, 1.62],
    [15, 65, 1.89],
    [15, 80, 2.81],
  ])('grows from %i to %i °C by %f %%', (cold, hot, percent) => {
    expect(Math.abs(growth(cold, hot).value * 100 - percent)).toBeLessThan(0.006);
  });

  it('fills 7 litres more at 90 °C than 200 kg of it fill at 10 °C', () => {
    // Source: rostudy.me/tema/5001143, 200.2 → 207.2 L (secondary page, rounded to 0.1 L).
    const [cold, hot] = [200_000 / density(10), 200_000 / density(90)];
    expect(hot - cold).toBeCloseTo(7, 0);
    expect(hot).toBeCloseTo(207.2, 1);
  });

  it('shrinks a little from 0 to 4 °C', () => {
    expect(growth(0, 4).value).toBeLessThan(0);
  });

  it('says what it takes when asked about ice, steam or a store that cools', () => {
    expect(() => density(-1)).toThrow('Water temperature: a number from 0 to 100 °C, not -1');
    expect(() => enthalpy(101)).toThrow(RangeError);
    expect(() => specificHeat(Number.NaN)).toThrow(RangeError);
    expect(() => growth(60, 10)).toThrow('Hot temperature: at least the cold one, 60 °C, not 10');
  });

  it('shows the growth with its numbers put in', () => {
    expect(growth(10, 60).lines).toEqual([
      {
        what: 'Growth of the water',
        rule: 'density at 10 °C ÷ density at 60 °C − 1',
        put: '999.70 ÷ 983.20 − 1',
        result: '1.68 %',
      },
    ]);
  });
});
