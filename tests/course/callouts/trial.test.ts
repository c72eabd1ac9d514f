import { describe, expect, test } from 'vitest';
import {
  calloutObjectives,
  familyOfObjective,
  objectiveOf,
} from '../../../src/course/callouts/objectives.ts';
import { calloutTrial, type Finished, isGrave } from '../../../src/course/callouts/trial.ts';
import { isRightAlone } from '../../../src/course/progress/answers.ts';
import { type Breach, breachSays } from '../../../src/engine/diagnose/breach.ts';
import { families } from '../../../src/engine/diagnose/symptom.ts';
import { isTrial } from '../../../src/store/records.ts';

const finished = (given: Partial<Finished> = {}): Finished => ({
  callout: { kind: 'made', system: 'three-port', seed: 7, level: 2 },
  family: 'no-heating',
  verdict: { right: true, proved: true, breaches: [] },
  wheels: 0,
  attempt: 1,
  at: 1_790_000_000_000,
  took: 600_000,
  ...given,
});

describe('A visit in the log', () => {
  test('is an answer to the objective of its family, and the store takes it', () => {
    const trial = calloutTrial(finished());
    expect(trial).toMatchObject({
      objective: 'callout-no-heating',
      item: 'callout/three-port/7/2',
      right: true,
      mode: 'callout',
    });
    expect(isTrial(trial)).toBe(true);
    expect(isRightAlone(trial)).toBe(true);
  });

  test('is right only when the fault is named, proved, and found without grave breach', () => {
    const right = (verdict: Finished['verdict']) => calloutTrial(finished({ verdict })).right;
    expect(right({ right: false, proved: false, breaches: [] })).toBe(false);
    expect(right({ right: true, proved: false, breaches: [] })).toBe(false);
    expect(right({ right: true, proved: true, breaches: [{ breach: 'hand-in-live' }] })).toBe(false);
    expect(right({ right: true, proved: true, breaches: [{ breach: 'tester-not-proved-again' }] })).toBe(
      true,
    );
  });

  test('counts the training wheels that were used as hints', () => {
    const trial = calloutTrial(finished({ wheels: 2 }));
    expect(trial.hints).toBe(2);
    expect(isRightAlone(trial)).toBe(false);
    expect(calloutTrial(finished({ wheels: 9 })).hints).toBe(3);
  });
});

test('Every breach that may put a hand on something live is grave, the slips in good order are not', () => {
  const slips: readonly Breach[] = ['tester-not-proved-again', 'live-before-dead'];
  const all = Object.keys(breachSays) as Breach[];
  expect(all.filter((breach) => !isGrave(breach)).sort()).toEqual([...slips].sort());
});

test('Every family of complaints has one objective, and each leads back to its family', () => {
  const all = Object.keys(families) as (keyof typeof families)[];
  expect(calloutObjectives.map(({ id }) => id)).toEqual(all.map(objectiveOf));
  expect(all.map((family) => familyOfObjective(objectiveOf(family)))).toEqual(all);
  expect(familyOfObjective('follow-the-call')).toBeUndefined();
});
