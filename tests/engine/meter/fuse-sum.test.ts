import { describe, expect, it } from 'vitest';
import { type ControlLoad, controlSum } from '../../../src/engine/meter/fuse-sum.ts';

// Source: typical loads, 140 + 60 + 2 × 6 + 5 = 217 W = 0.94 A (boiler from a forum, valve from public pages, the
// pump from memory; the sum derived).
const usual: ControlLoad[] = [
  { name: 'Boiler', watts: 140, throughEndSwitch: true },
  { name: 'Pump', watts: 60, throughEndSwitch: true },
  { name: 'Valves', watts: 6, count: 2 },
  { name: 'Programmer', watts: 5 },
];

describe('the sum of the controls', () => {
  it('of a usual system is 217 W and 0.94 A, well inside a 3 A fuse', () => {
    const { value } = controlSum(usual, 2.2);
    expect(value.watts).toBe(217);
    expect(value.amps).toBeCloseTo(0.94, 2);
    expect(value.fusePasses).toBe(true);
  });

  it('of one valve motor of 6 W is 26 mA', () => {
    // Source: 6 W at 230 V and power factor 1 (derived from a published motor rating).
    expect(controlSum([{ name: 'Valve', watts: 6 }], 2.2).value.amps).toBeCloseTo(0.026, 3);
  });

  it('with an immersion heater on the same spur is too much: 3 kW alone is 13.0 A', () => {
    // Source: 3 kW at 230 V (derived); an immersion has a circuit of its own (common practice).
    const { value } = controlSum([{ name: 'Immersion', watts: 3000 }], 2.2);
    expect(value.amps).toBeCloseTo(13, 1);
    expect(value.fusePasses).toBe(false);
  });

  it('passes a 3 A fuse at 690 W and not above', () => {
    // Source: 3 A BS 1362 on the spur (common practice), 3 × 230 = 690 (derived).
    const passes = (watts: number) => controlSum([{ name: 'Load', watts }], 2.2).value.fusePasses;
    expect([passes(690), passes(691)]).toEqual([true, false]);
  });

  it('counts only what the end switch carries against its rating', () => {
    const { value } = controlSum(usual, 2.2);
    expect(value.endSwitchAmps).toBeCloseTo(200 / 230, 9);
    expect(value.endSwitchPasses).toBe(true);
  });

  // Source: 2.2 A inductive in one public table (secondary), trade range 2 to 3 A (from memory).
  it.each([2, 2.2, 3])('finds an end switch of %f A overloaded just above its rating', (rating) => {
    const passes = (amps: number) =>
      controlSum([{ name: 'Boiler', watts: amps * 230, throughEndSwitch: true }], rating).value
        .endSwitchPasses;
    expect([passes(rating), passes(rating + 0.01)]).toEqual([true, false]);
  });

  it('shows the loads in its working', () => {
    expect(controlSum(usual, 2.2).lines[0]).toEqual({
      what: 'All loads',
      rule: 'boiler + pump + valves + programmer',
      put: '140 + 60 + 2 × 6 + 5',
      result: '217 W',
    });
  });

  it('says what it takes for a value out of range', () => {
    expect(() => controlSum([{ name: 'Pump', watts: -5 }], 2.2)).toThrow(
      'Pump: a number from 0 to 3000 W, not -5',
    );
    expect(() => controlSum([{ name: 'Valves', watts: 6, count: 1.5 }], 2.2)).toThrow(
      'Valves, how many: a whole number from 0 to 20, not 1.5',
    );
    expect(() => controlSum(usual, 0)).toThrow('End switch rating: a number from 0.5 to 10 A, not 0');
  });
});
