import { describe, expect, test } from 'vitest';
import { alikeTo } from '../../../src/engine/diagnose/alike.ts';
import { allCandidates } from '../../../src/engine/diagnose/callout.ts';
import { type Candidate, candidateOf, together } from '../../../src/engine/diagnose/candidate.ts';
import { expertRoute } from '../../../src/engine/diagnose/expert.ts';
import { difficultyOf, type Level, makeCallout } from '../../../src/engine/diagnose/generate.ts';
import { sharing } from '../../../src/engine/diagnose/symptom.ts';
import { must } from '../support/must.ts';
import { fault, site } from './callout.ts';

const LEVELS: readonly Level[] = [1, 2, 3];
const where = site('gravity-hot-water');
const { bench, system, wires } = where;
const all = allCandidates(system, wires);

describe('a callout by its seed', () => {
  test('is the same for the same seed', () => {
    expect(makeCallout(bench, wires, all, 7, 2)).toEqual(makeCallout(bench, wires, all, 7, 2));
  });

  test('differs from seed to seed', () => {
    const faults = Array.from(
      { length: 8 },
      (_, seed) => makeCallout(bench, wires, all, seed, 2)?.callout.fault.id,
    );
    expect(new Set(faults).size).toBeGreaterThan(4);
  });

  test.each(['combi-two-zones', 'three-port'])(
    'is of the level asked for, has a complaint, and can be settled: %s',
    (id) => {
      const one = site(id);
      const candidates = allCandidates(one.system, one.wires);
      for (const level of LEVELS) {
        const made = must(makeCallout(one.bench, one.wires, candidates, 3, level));
        const { callout, difficulty, alike } = made;
        expect(difficulty.level).toBe(level);
        expect(difficultyOf(one.bench, callout, candidates)).toEqual(difficulty);
        expect(callout.complaints.length).toBeGreaterThan(0);
        expect(sharing(one.bench, candidates, callout)).toHaveLength(difficulty.sharing);
        const same = new Set([callout.fault, ...alike]);
        expect(new Set(expertRoute(one.bench, callout, candidates).left)).toEqual(same);
        expect(new Set(alikeTo(one.bench, one.wires, callout.fault, candidates))).toEqual(new Set(alike));
      }
    },
  );

  test('is refused when no fault shows', () => {
    const hidden = fault(site('three-port'), 'programmer: heating off open');
    const three = site('three-port');
    const healthy = candidateOf(three.system, []);
    for (const level of LEVELS) {
      expect(makeCallout(three.bench, three.wires, [healthy, hidden], 1, level)).toBeUndefined();
      expect(makeCallout(three.bench, three.wires, [healthy], 1, level)).toBeUndefined();
    }
  });

  test('is refused when no test settles it: strip/6 and strip/7 part only while the cut-out is tripped', () => {
    const one = site('unvented-three-port');
    const two = ['strip/6', 'strip/7'].map((way) =>
      fault(one, `landed: room-stat/CALL strip/3 as room-stat/CALL ${way}`),
    );
    const made = (candidates: readonly Candidate[]) =>
      LEVELS.map((level) => makeCallout(one.bench, one.wires, candidates, 1, level)).filter(Boolean);
    expect(made([candidateOf(one.system, []), ...two])).toEqual([]);
    expect(made([candidateOf(one.system, []), ...two.slice(0, 1)])).toHaveLength(1);
  });

  test('has two faults at once only at the third level', () => {
    const double = must(
      together(system, fault(where, 'pump: dead'), fault(where, 'programmer: hot water open')),
    );
    const only = [candidateOf(system, []), double];
    expect(makeCallout(bench, wires, only, 1, 1)).toBeUndefined();
    expect(makeCallout(bench, wires, only, 1, 2)).toBeUndefined();
    expect(must(makeCallout(bench, wires, only, 1, 3)).callout.fault).toBe(double);
  });
});
