import { figure } from '../model/figure.ts';
import { type Range, within } from '../model/range.ts';
import type { Worked, WorkLine } from '../model/worked.ts';

export const ADG = 'Approved Document G (England), 2015 edition with 2016 amendments';

/** Thread of the safety valve's outlet. */
export type Outlet = 'G 1/2' | 'G 3/4' | 'G 1';

/** A copper size that D2 may have: mm outside, the most straight pipe it allows, and what an elbow takes off that. */
interface Row {
  readonly size: number;
  readonly limit: number;
  readonly elbow: number;
}

/** Table 3.1: for each outlet the least D1, mm, and the sizes of D2 in order, lengths in m. */
export const TABLE_3_1: Readonly<Record<Outlet, { readonly d1: number; readonly d2: readonly Row[] }>> = {
  'G 1/2': {
    d1: 15,
    d2: [
      { size: 22, limit: 9, elbow: 0.8 },
      { size: 28, limit: 18, elbow: 1 },
      { size: 35, limit: 27, elbow: 1.4 },
    ],
  },
  'G 3/4': {
    d1: 22,
    d2: [
      { size: 28, limit: 9, elbow: 1 },
      { size: 35, limit: 18, elbow: 1.4 },
      { size: 42, limit: 27, elbow: 1.7 },
    ],
  },
  'G 1': {
    d1: 28,
    d2: [
      { size: 35, limit: 9, elbow: 1.4 },
      { size: 42, limit: 18, elbow: 1.7 },
      { size: 54, limit: 27, elbow: 2.3 },
    ],
  },
};

export const RUN: Range = { name: 'Run of D2', unit: 'm', low: 0.3, high: 50 };
export const ELBOWS: Range = { name: 'Elbows or bends', unit: '', low: 0, high: 30, whole: true };

/** One size tried: the run with its elbows counted as pipe, m, the same the other way round, and how it came out. */
export interface Try extends Row {
  readonly equivalent: number;
  /** Straight pipe left for the run once the elbows are taken off the limit, m. */
  readonly allowed: number;
  readonly passes: boolean;
}

/** Sizes in mm. `d2` is undefined when no size of the table will do. */
export interface DischargePipe {
  readonly d1: number;
  readonly d2: number | undefined;
  readonly tries: readonly Try[];
}

/** Tenths of a metre are not exact in binary: both sides are compared as whole millimetres. */
const millimetres = (metres: number): number => Math.round(metres * 1000);

function tryRow(row: Row, run: number, elbows: number): Try {
  const taken = elbows * row.elbow;
  const passes = millimetres(run + taken) <= millimetres(row.limit);
  return { ...row, equivalent: run + taken, allowed: row.limit - taken, passes };
}

const lineOf = ({ size, limit, elbow, equivalent, allowed, passes }: Try, run: number, elbows: number) => ({
  what: `D2 in ${size} mm`,
  rule: `run + elbows × ${elbow} m, at most ${limit} m`,
  put: `${figure(run, 3)} + ${elbows} × ${elbow} = ${figure(equivalent, 3)} m`,
  result: passes
    ? `fits: ${figure(allowed, 3)} m of run allowed`
    : `too long: ${allowed > 0 ? `only ${figure(allowed, 3)} m` : 'no length'} of run allowed`,
  passes,
});

/**
 * Sizes of the discharge pipes in copper: D1 from valve to tundish, D2 from the tundish on. Sizes are tried from the
 * smallest up to the first that passes; a run right on the limit passes.
 * @param run length of D2 measured along the pipe, 0.3 to 50 m
 * @param elbows elbows and bends in D2, 0 to 30
 * @throws RangeError for a value out of range
 */
export function dischargePipe(outlet: Outlet, run: number, elbows: number): Worked<DischargePipe> {
  within(RUN, run);
  within(ELBOWS, elbows);
  const { d1, d2 } = TABLE_3_1[outlet];
  const all = d2.map((row) => tryRow(row, run, elbows));
  const first = all.findIndex(({ passes }) => passes);
  const tries = first < 0 ? all : all.slice(0, first + 1);
  const lines: WorkLine[] = [
    { what: 'D1', rule: 'not less than the valve’s outlet', put: outlet, result: `${d1} mm`, lookedUp: true },
    ...tries.map((one) => lineOf(one, run, elbows)),
  ];
  return { value: { d1, d2: all[first]?.size, tries }, source: `${ADG}, Table 3.1`, lines };
}
