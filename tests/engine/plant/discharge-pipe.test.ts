import { describe, expect, it } from 'vitest';
import { dischargePipe, type Outlet } from '../../../src/engine/plant/discharge-pipe.ts';
import { DISCHARGE_RULES, d1Length } from '../../../src/engine/plant/discharge-rules.ts';

const trial = (outlet: Outlet, run: number, elbows: number) => {
  const { d1, d2, tries } = dischargePipe(outlet, run, elbows).value;
  return { d1, d2, tries: tries.map(({ size, passes }) => [size, passes]) };
};

describe('the size of D2', () => {
  // Source: Approved Document G, 2015 edition with 2016 amendments, Table 3.1 (primary text read).
  // Outlet, D1 and D2 in mm, most straight pipe in m, each elbow in m.
  const TABLE: [Outlet, number, number, number, number][] = [
    ['G 1/2', 15, 22, 9, 0.8],
    ['G 1/2', 15, 28, 18, 1],
    ['G 1/2', 15, 35, 27, 1.4],
    ['G 3/4', 22, 28, 9, 1],
    ['G 3/4', 22, 35, 18, 1.4],
    ['G 3/4', 22, 42, 27, 1.7],
    ['G 1', 28, 35, 9, 1.4],
    ['G 1', 28, 42, 18, 1.7],
    ['G 1', 28, 54, 27, 2.3],
  ];

  it.each(TABLE)(
    'for %s with D1 %i mm is %i mm up to %i m, each elbow %f m',
    (outlet, d1, d2, limit, elbow) => {
      expect(trial(outlet, limit, 0)).toMatchObject({ d1, d2 });
      expect(trial(outlet, limit + 0.001, 0).d2).not.toBe(d2);
      // Three elbows take their allowance off the limit exactly.
      expect(trial(outlet, limit - 3 * elbow, 3).d2).toBe(d2);
      expect(trial(outlet, limit - 3 * elbow + 0.001, 3).d2).not.toBe(d2);
    },
  );

  it('for a G 1/2 valve, 7 m and 4 elbows is 28 mm: 22 mm allows 5.8 m, 28 mm allows 14 m', () => {
    // Source: Approved Document G, 2015 edition with 2016 amendments, worked example (primary text read).
    expect(trial('G 1/2', 7, 4)).toEqual({
      d1: 15,
      d2: 28,
      tries: [
        [22, false],
        [28, true],
      ],
    });
    const [small, large] = dischargePipe('G 1/2', 7, 4).value.tries;
    expect(small?.allowed).toBeCloseTo(5.8, 9);
    expect(large?.allowed).toBeCloseTo(14, 9);
    // The same the other way round: common practice, several makers (secondary).
    expect(small?.equivalent).toBeCloseTo(10.2, 9);
    expect(large?.equivalent).toBeCloseTo(11, 9);
  });

  it('for a G 1/2 valve, 6 m and 6 elbows is 28 mm: 10.8 m is too long for 22 mm, 12 m fits 28 mm', () => {
    // Source: apprenticeship textbook (2019) p.416 (secondary).
    expect(trial('G 1/2', 6, 6).d2).toBe(28);
    expect(dischargePipe('G 1/2', 6, 6).value.tries.map(({ equivalent }) => equivalent)).toEqual([
      expect.closeTo(10.8, 9),
      expect.closeTo(12, 9),
    ]);
  });

  it('for a G 1/2 valve, 9 m and 5 elbows is 28 mm: 13 m against 14 m', () => {
    // Source: question in the same textbook p.416, worked from Table 3.1 (derived).
    expect(trial('G 1/2', 9, 5).tries).toEqual([
      [22, false],
      [28, true],
    ]);
    expect(dischargePipe('G 1/2', 9, 5).value.tries.map(({ equivalent }) => equivalent)).toEqual([
      expect.closeTo(13, 9),
      expect.closeTo(14, 9),
    ]);
  });

  it('for a G 3/4 valve and 6 m passes 28 mm with 3 elbows, right on the limit, and fails it with 4', () => {
    // Source: Table 3.1 (derived).
    expect(trial('G 3/4', 6, 3).tries).toEqual([[28, true]]);
    expect(trial('G 3/4', 6, 4).tries).toEqual([
      [28, false],
      [35, true],
    ]);
    expect(dischargePipe('G 3/4', 6, 4).value.tries[1]?.equivalent).toBeCloseTo(11.6, 9);
  });

  it('is not to be found in the table when every size is too small', () => {
    expect(trial('G 1', 30, 0)).toEqual({
      d1: 28,
      d2: undefined,
      tries: [
        [35, false],
        [42, false],
        [54, false],
      ],
    });
  });

  it('is never smaller for a longer run or another elbow', () => {
    const rank = (d2: number | undefined) => d2 ?? Number.POSITIVE_INFINITY;
    for (const outlet of ['G 1/2', 'G 3/4', 'G 1'] as const) {
      for (let run = 1; run < 28; run++) {
        for (let elbows = 0; elbows < 10; elbows++) {
          const here = rank(trial(outlet, run, elbows).d2);
          expect(rank(trial(outlet, run + 1, elbows).d2)).toBeGreaterThanOrEqual(here);
          expect(rank(trial(outlet, run, elbows + 1).d2)).toBeGreaterThanOrEqual(here);
        }
      }
    }
  });

  it('comes with the working of every size tried', () => {
    expect(dischargePipe('G 1/2', 7, 4).lines.slice(1)).toEqual([
      {
        what: 'D2 in 22 mm',
        rule: 'run + elbows × 0.8 m, at most 9 m',
        put: '7 + 4 × 0.8 = 10.2 m',
        result: 'too long: only 5.8 m of run allowed',
        passes: false,
      },
      {
        what: 'D2 in 28 mm',
        rule: 'run + elbows × 1 m, at most 18 m',
        put: '7 + 4 × 1 = 11 m',
        result: 'fits: 14 m of run allowed',
        passes: true,
      },
    ]);
  });

  it('says what it takes for half an elbow or no run', () => {
    expect(() => dischargePipe('G 1/2', 5, 1.5)).toThrow(
      'Elbows or bends: a whole number from 0 to 30, not 1.5',
    );
    expect(() => dischargePipe('G 1/2', 0, 0)).toThrow('Run of D2: a number from 0.3 to 50 m, not 0');
  });
});

describe('the length of D1', () => {
  it('is 600 mm at most', () => {
    // Source: Approved Document G, 2015 edition with 2016 amendments, 3.54 and Diagram 1 (primary text read).
    expect([d1Length(600).value, d1Length(601).value]).toEqual([true, false]);
  });

  it('says what it takes for nonsense', () => {
    expect(() => d1Length(0)).toThrow('Length of D1: a number from 1 to 5000 mm, not 0');
  });
});

describe('the rules of the tundish', () => {
  it('each name the paragraph they come from', () => {
    // Source: Approved Document G, 2015 edition with 2016 amendments, 3.50 to 3.62 (primary text read).
    for (const { paragraph } of DISCHARGE_RULES) expect(paragraph).toMatch(/^3\.(5\d|6[0-2])$/);
    expect(DISCHARGE_RULES.find(({ says }) => says.includes('1 in 200'))?.paragraph).toBe('3.56');
  });
});
