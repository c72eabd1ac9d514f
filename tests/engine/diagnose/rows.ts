import { expect, test } from 'vitest';
import { candidateOf } from '../../../src/engine/diagnose/candidate.ts';
import type { Settings } from '../../../src/engine/model/system.ts';
import { call, fault, site, Visit } from './callout.ts';

/** What is looked for, by test: `tester spur/L spur/N`, `works boiler`, `warms coil`, `stands three-port`. */
export type Finds = Readonly<Record<string, number | boolean | string>>;
type Call = keyof typeof call | Settings;

/** One row of the fault table: a fault, then settings and what the table says of them. */
export interface Row {
  /** The row of the table, and what of it is played. Source of every row: common practice (fault table of the course). */
  readonly row: string;
  readonly on: string;
  /** None: the system is healthy. */
  readonly faults: readonly string[];
  readonly steps: readonly (readonly [Call, Finds])[];
}

/** What one test of a visit shows. */
export function show(visit: Visit, what: string): number | boolean | string {
  const [kind = '', a = '', b = ''] = what.split(' ');
  if (kind === 'works') return visit.works(a);
  if (kind === 'warms') return visit.warms(a);
  if (kind === 'stands') return visit.stands(a);
  if (kind === 'tester' || kind === 'volts' || kind === 'ohms' || kind === 'continuity') {
    return visit.read(kind, a, b);
  }
  throw new Error(`no test "${what}"`);
}

/** A visit to a system of the library with these faults, supply on and nothing called. */
export function visitTo(on: string, faults: readonly string[]): Visit {
  const where = site(on);
  const candidate = faults.length === 0 ? candidateOf(where.system, []) : fault(where, ...faults);
  return new Visit(where, candidate);
}

export function expectFinds(visit: Visit, finds: Finds): void {
  const found = Object.fromEntries(Object.keys(finds).map((what) => [what, show(visit, what)]));
  expect(found).toEqual(finds);
}

/** A test per row: the settings one after the other, and all readings of each. */
export function play(rows: readonly Row[]): void {
  for (const { row, on, faults, steps } of rows) {
    test(`${row}`, () => {
      const visit = visitTo(on, faults);
      for (const [settings, finds] of steps) {
        visit.set(typeof settings === 'string' ? call[settings] : settings);
        expectFinds(visit, finds);
      }
    });
  }
}
