import { expect, test } from 'vitest';
import { handControls } from '../../../src/ui/aid/controls.ts';
import { placesOf } from '../../../src/ui/aid/places.ts';
import { sayQuestion } from '../../../src/ui/aid/say.ts';
import { must } from '../../engine/support/must.ts';
import { aidOn, spread, walk } from './visit.ts';

/** Systems of every sort: with and without valves, volt-free, sealed, with several supplies. */
const SYSTEMS = [
  'three-port',
  'two-two-ports-unvented',
  'combi-volt-free',
  'gravity-two-port',
  'heat-pump-diverter',
  'solar-coil-unvented',
  'thermal-store',
  'twin-immersion',
  'underfloor',
];
const SEEDS = [1, 2, 3, 4, 5, 6];

const faultOf = (inquiry: ReturnType<typeof aidOn>, seed: number) =>
  must(inquiry.candidates[spread(seed, 7, inquiry.candidates.length)]);

test.each(SYSTEMS)(
  'On %s an unqualified person is never told to open, to measure, to reset or to set what no hand sets',
  (id) => {
    const inquiry = aidOn(id);
    const hands = handControls(inquiry.system);
    for (const seed of SEEDS) {
      for (const next of walk(inquiry, faultOf(inquiry, seed), 'looks', seed).nexts) {
        expect(next.test.kind, sayQuestion(inquiry.system, next.test)).not.toBe('reads');
        expect(next.danger).toBe('none');
        expect(next.covers).toEqual([]);
        expect(hands).toEqual(expect.arrayContaining(Object.keys(next.changes)));
      }
    }
  },
);

test.each(SYSTEMS)('On %s somebody competent for dead tests is never told to test live', (id) => {
  const inquiry = aidOn(id);
  for (const seed of SEEDS) {
    for (const next of walk(inquiry, faultOf(inquiry, seed), 'dead', seed).nexts) {
      expect(next.danger).not.toBe('live');
    }
  }
});

test.each(SYSTEMS)(
  'On %s the true fault is never lost, whatever the past of the valves, and every answer rules something out',
  (id) => {
    const inquiry = aidOn(id);
    for (const seed of SEEDS) {
      const fault = faultOf(inquiry, seed);
      const { kept, left, nexts } = walk(inquiry, fault, 'live', seed);
      expect(kept, fault.says).toBe(true);
      expect(left).toContain(fault);
      for (const { answers, most, of } of nexts) {
        expect(most).toBeLessThan(of);
        expect(answers.length).toBeGreaterThan(1);
      }
    }
  },
);

test('With looks and dead tests a fault of a three-port that shows itself comes down to five or fewer, in one place', () => {
  const inquiry = aidOn('three-port');
  const tried = inquiry.candidates.filter((_, k) => k % 3 === 1);
  const shown = tried.flatMap((fault, seed) => {
    const { left } = walk(inquiry, fault, 'dead', seed);
    return left.some(({ failures }) => failures.length === 0) ? [] : [left];
  });
  expect(shown.length).toBeGreaterThan(tried.length / 2);
  for (const left of shown) {
    expect(left.length).toBeLessThanOrEqual(5);
    const places = placesOf(inquiry.system, inquiry.groups(left)).map(({ name }) => name);
    if (left.length > 3) expect(places, left.map(({ says }) => says).join('; ')).toHaveLength(1);
  }
});

test('Where nothing explains every finding, the finding that is wrong is among those that bring candidates back', () => {
  const inquiry = aidOn('two-two-ports-unvented');
  for (const seed of SEEDS) {
    const { moments } = walk(inquiry, faultOf(inquiry, seed), 'dead', seed);
    const last = must(moments.at(-1));
    const wrong = must(last.finds.at(-1));
    const turned = { ...wrong, outcome: typeof wrong.outcome === 'boolean' ? !wrong.outcome : wrong.outcome };
    const lied = [
      ...moments.slice(0, -1),
      { ...last, finds: last.finds.map((find) => (find === wrong ? turned : find)) },
    ];
    if (inquiry.left(lied).length > 0) continue;
    const misfits = inquiry.misfits(lied);
    expect(misfits).toContainEqual(expect.objectContaining({ moment: lied.length - 1, test: wrong.test }));
    for (const { moment, test: out, back } of misfits) {
      const without = lied.map((one, k) =>
        k === moment ? { ...one, finds: one.finds.filter((find) => find.test !== out) } : one,
      );
      expect(inquiry.left(without)).toHaveLength(back);
    }
  }
});
