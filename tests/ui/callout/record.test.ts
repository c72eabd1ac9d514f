import { expect, test } from 'vitest';
import { objectiveOf } from '../../../src/course/callouts/objectives.ts';
import { masteryOf } from '../../../src/course/progress/mastery.ts';
import type { Trial } from '../../../src/course/trial.ts';
import type { Callout } from '../../../src/engine/diagnose/callout.ts';
import type { Verdict } from '../../../src/engine/diagnose/judge.ts';
import { complaintsOf, familyOf } from '../../../src/engine/diagnose/symptom.ts';
import type { Wheel } from '../../../src/ui/callout/desk.svelte.ts';
import { recordVisit } from '../../../src/ui/callout/record.ts';
import { helpOf, wheelsFor } from '../../../src/ui/callout/wheels.ts';
import { fault, site } from '../../engine/diagnose/callout.ts';

const where = site('three-port');
const { system, wires, bench } = where;
const broken = fault(where, 'boiler: does not fire');
const complaints = complaintsOf(bench, wires, broken, 1);
const callout: Callout = { system, wires, fault: broken, complaints, found: { supply: 'on' }, seed: 1 };
const objective = objectiveOf(familyOf(callout));
const proved = { right: true, proved: true, breaches: [] } as unknown as Verdict;

/** A log as the store keeps it, and visits with these wheels written into it. */
function learner() {
  const log: Trial[] = [];
  const store = {
    add: async (...trials: readonly Trial[]) => void log.push(...trials),
    trials: async () => log,
    trialsOf: async (id: string) => log.filter((one) => one.objective === id),
    now: () => log.length + 1,
  };
  const visit = (id: string, wheels: readonly Wheel[], verdict = proved) =>
    recordVisit(
      store,
      {
        callout,
        story: {
          address: `callout/${id}`,
          title: '',
          level: 1,
          family: familyOf(callout),
          customer: '',
          house: '',
        },
        wheelsUsed: new Set(wheels),
        took: 5000,
      },
      verdict,
    );
  return { log, store, visit };
}

test('Wheels that a learner still needs fade with each visit that goes well, and are no hints', async () => {
  const { log, store, visit } = learner();
  const shown: number[] = [];
  for (const id of ['one', 'two', 'three']) {
    const given = wheelsFor(await helpOf(store, callout));
    shown.push(given.length);
    const trial = await visit(id, given);
    expect(trial?.hints).toBe(0);
    expect(trial?.shown).toBe(given.length);
  }
  expect(shown).toEqual([3, 1, 0]);
  expect(log.every((trial) => trial.objective === objective && trial.mode === 'callout')).toBe(true);
  // With wheels on nothing is proved of the learner: only the visit without them counts as known.
  expect(masteryOf(log).right).toBe(1);
});

test('A wheel that was turned on besides counts as a hint', async () => {
  const { visit } = learner();
  await visit('one', ['count', 'path', 'next']);
  const trial = await visit('two', ['count', 'next']);
  expect([trial?.shown, trial?.hints]).toEqual([1, 1]);
});

test('A second visit to the same callout is practice, not evidence', async () => {
  const { visit } = learner();
  expect((await visit('one', []))?.attempt).toBe(1);
  expect((await visit('one', []))?.attempt).toBe(2);
});

test('A right answer that was not proved, or not safe, is logged as wrong', async () => {
  const { visit } = learner();
  expect((await visit('one', [], { ...proved, proved: false }))?.right).toBe(false);
  const breaches = [{ entry: 0, breach: 'hand-in-live' as const }];
  expect((await visit('two', [], { ...proved, breaches }))?.right).toBe(false);
  expect((await visit('three', []))?.right).toBe(true);
});
