import { describe, expect, it } from 'vitest';
import { faultLoop, highestLoop, loopResistance } from '../../../src/engine/meter/loop-resistance.ts';

const cable = (line: number, earth: number, metres: number) =>
  ({ kind: 'cable', line, earth, metres }) as const;

describe('R1 + R2', () => {
  // Source: IEC 60228 and On-Site Guide Table I1 as quoted on a forum (secondary); the pairs are sums (derived).
  it.each([
    [1, 1, 36.2],
    [1.5, 1, 30.2],
    [1.5, 1.5, 24.2],
    [2.5, 1.5, 19.51],
  ])('of %f with %f mm² is %f mΩ for each metre', (line, earth, milliohms) => {
    expect(loopResistance(cable(line, earth, 1)).value * 1000).toBeCloseTo(milliohms, 9);
  });

  it('of 10 m of 0.75 mm² flex is 0.520 Ω', () => {
    // Source: arithmetic on IEC 60228 class 5 (derived).
    const { value } = loopResistance({ kind: 'flex', line: 0.75, earth: 0.75, metres: 10 });
    expect(value).toBeCloseTo(0.52, 9);
  });
});

describe('the highest loop impedance for a BS 1362 fuse', () => {
  // Source: BS 7671:2008 Table 41.2(d), 16.4 and 2.42 Ω (secondary) × 0.95 (from memory) = 15.6 and 2.30 Ω.
  it.each([
    [3, 15.6, 1],
    [13, 2.3, 2],
  ] as const)('of %i A is %f Ω', (fuse, ohms, places) => {
    expect(highestLoop(fuse).value).toBeCloseTo(ohms, places);
  });

  it.each([
    [3, 16.4, 0.1],
    [13, 2.42, 0.01],
  ] as const)('of %i A is 0.95 of the %f Ω of 2008', (fuse, old, place) => {
    expect(Math.abs(highestLoop(fuse).value / 0.95 - old)).toBeLessThan(place / 2);
  });
});

describe('the loop at the end of a run', () => {
  const run = cable(1.5, 1, 20);

  it('adds R1 + R2 to what was measured at the spur', () => {
    expect(faultLoop(run, 0.8, 3).value.zs).toBeCloseTo(0.8 + 0.604, 9);
  });

  it('passes cold up to 80 % of the limit, a rule of thumb: 12.5 Ω for 3 A and 1.84 Ω for 13 A', () => {
    // Source: on-site rule of thumb, BS 7671 Appendix 3 (from memory); products derived.
    const cold = (fuse: 3 | 13, zs: number) => faultLoop(run, zs - 0.604, fuse).value.passesCold;
    expect([cold(3, 12.48), cold(3, 12.5)]).toEqual([true, false]);
    expect([cold(13, 1.83), cold(13, 1.85)]).toEqual([true, false]);
  });

  it('can pass the limit and not the rule of thumb, and says which is which', () => {
    const { value, lines } = faultLoop(run, 14, 3);
    expect(value).toMatchObject({ passes: true, passesCold: false });
    expect(lines.at(-1)?.rule).toContain('rule of thumb');
  });

  it('fails behind 13 A what 3 A would clear', () => {
    expect([faultLoop(run, 5, 3).value.passes, faultLoop(run, 5, 13).value.passes]).toEqual([true, false]);
  });

  it('says what it takes for a value out of range', () => {
    expect(() => faultLoop(run, -1, 3)).toThrow('Loop impedance at the spur: a number from 0 to 200 Ω');
    expect(() => loopResistance(cable(4, 1.5, 10))).toThrow('Cross-section of a cable: one of 0.75, 1, 1.5');
  });
});
