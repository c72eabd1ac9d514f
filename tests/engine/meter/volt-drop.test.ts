import { describe, expect, it } from 'vitest';
import { milliohmsPerMetre } from '../../../src/engine/meter/conductors.ts';
import { dropAllowed, flexCarries, flexDrop, tableDrop } from '../../../src/engine/meter/volt-drop.ts';

describe('the resistance of a conductor', () => {
  // Source: IEC 60228, 20 °C, mΩ/m, as two public engineering tables agree (secondary).
  it.each([
    ['flex', 0.5, 39],
    ['flex', 0.75, 26],
    ['flex', 1, 19.5],
    ['flex', 1.5, 13.3],
    ['cable', 0.75, 24.5],
    ['cable', 1, 18.1],
    ['cable', 1.5, 12.1],
    ['cable', 2.5, 7.41],
  ] as const)('of %s %f mm² is %f mΩ for each metre', (kind, mm2, milliohms) => {
    expect(milliohmsPerMetre(kind, mm2)).toBe(milliohms);
  });
});

describe('the volt drop of a run', () => {
  it('of 10 m of 0.75 mm² flex at 1 A is 0.52 V at 20 °C', () => {
    // Source: 0.520 Ω out and back, arithmetic on IEC 60228 class 5 (derived).
    const { value, lines } = flexDrop({ mm2: 0.75, metres: 10, amps: 1 }, false);
    expect(value).toBeCloseTo(0.52, 9);
    expect(lines[0]?.result).toBe('0.520 Ω');
  });

  it('is 1.20 times as much with the cores at 70 °C', () => {
    // Source: IEC 60228 correction list (secondary).
    expect(flexDrop({ mm2: 0.75, metres: 10, amps: 1 }, true).value).toBeCloseTo(0.624, 9);
  });

  it('of 20 m of 1.0 mm² at 0.5 A is 0.44 V by the table', () => {
    // Source: BS 7671 Appendix 4, 44 mV/A/m, as quoted on a public page (secondary); product derived.
    expect(tableDrop({ mm2: 1, metres: 20, amps: 0.5 }).value).toBeCloseTo(0.44, 9);
  });

  it.each([
    [1, 18.1],
    [1.5, 12.1],
    [2.5, 7.41],
  ])(
    'of %f mm² agrees between the table and the warm resistance of its cores within 2 %%',
    (mm2, milliohms) => {
      // Source: IEC 60228 × 1.20 × 2 against BS 7671 mV/A/m (both secondary).
      const table = tableDrop({ mm2, metres: 1, amps: 1 }).value * 1000;
      expect(Math.abs((2 * milliohms * 1.2) / table - 1)).toBeLessThan(0.02);
    },
  );

  it('may be 11.5 V and no more', () => {
    // Source: BS 7671 Appendix 4, Table 4Ab, 5 % of 230 V (secondary).
    expect([dropAllowed(11.5).value, dropAllowed(11.51).value]).toEqual([true, false]);
  });

  it.each([
    [0.5, 3],
    [0.75, 6],
    [1, 10],
    [1.5, 15],
  ])('in flex of %f mm² carries %i A and no more', (mm2, amps) => {
    // Source: BS 7671 Table 4F3A, as quoted on a public page; 1.5 mm² 15 to 16 A (secondary).
    expect([flexCarries(mm2, amps).value, flexCarries(mm2, amps + 0.01).value]).toEqual([true, false]);
  });

  it('says what it takes for a size or a length it does not know', () => {
    expect(() => flexDrop({ mm2: 4, metres: 10, amps: 1 }, false)).toThrow(
      'Cross-section of a flex: one of 0.5, 0.75, 1, 1.5 mm², not 4',
    );
    expect(() => tableDrop({ mm2: 0.75, metres: 10, amps: 1 })).toThrow('one of 1, 1.5, 2.5 mm², not 0.75');
    expect(() => flexDrop({ mm2: 1, metres: 0, amps: 1 }, false)).toThrow(
      'Length of run: a number from 0.1 to 200 m, not 0',
    );
  });
});
