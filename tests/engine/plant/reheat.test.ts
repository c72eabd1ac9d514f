import { describe, expect, it } from 'vitest';
import { flowForPower, powerForFlow } from '../../../src/engine/plant/coil-flow.ts';
import {
  heatUpEnergy,
  heatUpEnergyByRule,
  heatUpPower,
  heatUpTime,
} from '../../../src/engine/plant/reheat.ts';

describe('heating up a store', () => {
  // Source: calorifier supplier's help page, by 0.001163 kWh per litre and kelvin (secondary); printed to 0.1 kW.
  it.each([
    [{ litres: 1000, from: 5, to: 60 }, 45, 85.3],
    [{ litres: 2200, from: 10, to: 62 }, 90, 88.7],
  ])('%o in %i minutes takes %f kW', (heating, minutes, kilowatts) => {
    expect(heatUpPower(heating, minutes, heatUpEnergyByRule).value).toBeCloseTo(kilowatts, 1);
    // The properties of water give the same within 0.4 %.
    expect(Math.abs(heatUpPower(heating, minutes).value / kilowatts - 1)).toBeLessThan(0.004);
  });

  it('by 10 K takes 3.5 kWh for 300 litres', () => {
    // Source: heatingandventilating.net/legionella-madness (secondary), exact 3.49 (derived).
    const heating = { litres: 300, from: 50, to: 60 };
    expect(heatUpEnergyByRule(heating).value).toBeCloseTo(3.49, 2);
    // A litre of water at 50 °C is 1.2 % lighter than a kilogram, and so the properties of water give that much less.
    expect(heatUpEnergy(heating).value / 3.49).toBeCloseTo(0.988, 2);
  });

  // Source: IAPWS-95, no losses, one temperature throughout (derived); kWh to 0.01, minutes to the places shown.
  it.each([
    [210, 12.2, 3, 243.9],
    [210, 12.2, 20, 36.6],
    [150, 8.71, 3, 174],
    [150, 8.71, 15, 34.8],
    [300, 17.42, 3, 348],
    [300, 17.42, 28, 37.3],
  ])(
    'of %i litres from 10 to 60 °C takes %f kWh: with %i kW, %f minutes',
    (litres, kWh, kilowatts, minutes) => {
      const heating = { litres, from: 10, to: 60 };
      expect(Math.abs(heatUpEnergy(heating).value - kWh)).toBeLessThan(0.006);
      expect(Math.abs(heatUpTime(heating, kilowatts).value / minutes - 1)).toBeLessThan(0.002);
      // The trade's constant comes within 0.3 % of it.
      expect(Math.abs(heatUpEnergyByRule(heating).value / kWh - 1)).toBeLessThan(0.003);
    },
  );

  it('takes the power that its own time asks for', () => {
    const heating = { litres: 180, from: 12, to: 61 };
    const { value: minutes } = heatUpTime(heating, 17);
    expect(heatUpPower(heating, minutes).value).toBeCloseTo(17, 9);
  });

  it('shows mass, heat, energy and time in turn', () => {
    const { lines } = heatUpTime({ litres: 210, from: 10, to: 60 }, 20);
    expect(lines.map(({ what }) => what)).toEqual([
      'Mass of water',
      'Heat for each kilogram',
      'Energy',
      'Time',
    ]);
    expect(lines.at(-1)?.result).toBe('36.6 min');
  });

  it('says what it takes for a value out of range', () => {
    expect(() => heatUpEnergy({ litres: 0, from: 10, to: 60 })).toThrow('Water heated: a number from 1 to');
    expect(() => heatUpEnergyByRule({ litres: 100, from: 60, to: 60 })).toThrow(
      'Hot water: above the cold water, 60 °C, not 60',
    );
    expect(() => heatUpTime({ litres: 100, from: 10, to: 60 }, 0)).toThrow('Heat input: a number from 0.1');
  });
});

describe('the flow through a coil', () => {
  // Source: arithmetic, kW × 60 ÷ (4.186 × ΔT) (derived); printed to 0.1 L/min.
  it.each([
    [24, 20, 17.2],
    [24, 11, 31.3],
    [15, 20, 10.8],
  ])('carries %i kW at a drop of %i K with %f L/min', (kilowatts, drop, flow) => {
    expect(Math.abs(flowForPower(kilowatts, drop).value - flow)).toBeLessThan(0.06);
    expect(powerForFlow(flowForPower(kilowatts, drop).value, drop).value).toBeCloseTo(kilowatts, 9);
  });

  it('says what it takes for a drop of nothing', () => {
    expect(() => flowForPower(24, 0)).toThrow('Drop from flow to return: a number from 1 to 50 K, not 0');
  });
});
