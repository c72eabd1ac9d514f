import { expect, test } from 'vitest';
import type { Breach } from '../../../src/engine/diagnose/breach.ts';
import type { Told } from '../../../src/engine/diagnose/judge.ts';
import { headline, marksOf } from '../../../src/ui/callout/verdict-words.ts';
import { countsOf, walkOf } from '../../../src/ui/callout/walk.ts';
import { fault, site } from '../../engine/diagnose/callout.ts';

const where = site('three-port');
const [pump, boiler] = ['pump: dead', 'boiler: does not fire'].map((id) => fault(where, id));
if (!pump || !boiler) throw new Error('no such faults');
const good = { right: true, proved: true, left: [], alike: [], breaches: [], needless: [] };
const hand: { entry: number; breach: Breach } = { entry: 3, breach: 'hand-in-live' };
const late: { entry: number; breach: Breach } = { entry: 3, breach: 'tester-not-proved-again' };
const marks = (verdict: Parameters<typeof marksOf>[1]) =>
  Object.fromEntries(
    marksOf(where.system, verdict, pump).map(({ about, good: ok, says }) => [about, { ok, says }]),
  );

test('A right answer that the readings leave open is called a guess, and the others are named', () => {
  const lucky = { ...good, proved: false, left: [boiler] };
  expect(headline(lucky)).toBe('Right, but a lucky guess');
  expect(marks(lucky).Proof).toEqual({
    ok: false,
    says: 'What you saw still fits 1 other fault: the boiler does not fire.',
  });
});

test('A right and proved answer is praised only when it was safe', () => {
  expect(headline(good)).toBe('Found, and proved');
  expect(headline({ ...good, breaches: [hand] })).toBe('Found and proved, but not safely');
  expect(marks({ ...good, breaches: [hand] }).Safety?.ok).toBe(false);
  // A slip in the order of good work is told, and does not take the headline: see course/callouts/trial.ts.
  expect(headline({ ...good, breaches: [late] })).toBe('Found, and proved');
  expect(marks({ ...good, breaches: [late] }).Safety?.ok).toBe(false);
});

test('A wrong answer is told apart: it still fits what was seen, or that had ruled it out', () => {
  const wrong = { ...good, right: false, proved: false };
  expect(marks({ ...wrong, left: [pump] }).Diagnosis?.says).toMatch(/^It fits what you saw/);
  expect(marks({ ...wrong, left: [boiler] }).Diagnosis?.says).toMatch(/already ruled it out/);
});

test('Parts changed without need are named', () => {
  expect(marks({ ...good, needless: ['pump', 'boiler'] }).Parts?.says).toBe(
    'You changed the pump and the boiler without need.',
  );
});

const told = (entry: number, before: number, after: number): Told => ({ entry, before, after, ruledOut: [] });

test('In the walk-through, tests in a row that told nothing are folded into one line', () => {
  const trail = [told(0, 40, 20), told(1, 20, 20), told(4, 20, 20), told(5, 20, 3), told(6, 3, 3)];
  expect(walkOf(trail)).toEqual([
    { kind: 'told', number: 1, told: trail[0] },
    { kind: 'nothing', from: 2, to: 3, entries: [1, 4] },
    { kind: 'told', number: 4, told: trail[3] },
    { kind: 'nothing', from: 5, to: 5, entries: [6] },
  ]);
  expect(countsOf(trail)).toEqual([40, 20, 3]);
});

test('A test that told nothing stands by itself where a better one was at hand', () => {
  const step = { acts: [], test: { kind: 'works', part: 'pump' }, cost: 1, gain: 1, most: 10 } as const;
  const missed: Told = { ...told(2, 20, 20), better: { step, most: 10 } };
  expect(walkOf([told(1, 20, 20), missed])).toEqual([
    { kind: 'nothing', from: 1, to: 1, entries: [1] },
    { kind: 'told', number: 2, told: missed },
  ]);
});
