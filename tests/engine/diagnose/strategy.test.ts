import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answersOf, branchesOf, gainOf } from '../../../src/engine/diagnose/answers.ts';
import { failureCandidates } from '../../../src/engine/diagnose/candidate.ts';
import { consistent, enterAll, outcomeAt, type Test } from '../../../src/engine/diagnose/evidence.ts';
import { arrive, type Setup } from '../../../src/engine/diagnose/setup.ts';
import { bestPlan, halfSplit, nextTests } from '../../../src/engine/diagnose/strategy.ts';
import { costOf, coversOn, looks, testsNow } from '../../../src/engine/diagnose/tests.ts';
import { identify, isolate } from '../../../src/engine/diagnose/visit.ts';
import type { World } from '../../../src/engine/diagnose/world.ts';
import { must } from '../support/must.ts';
import { seed } from '../support/random.ts';
import { call, fault, site } from './callout.ts';

const where = site('two-two-ports-unvented');
const { system, wires, bench } = where;
const closed = arrive(system, wires, { supply: 'on', ...call.water });
/** All covers off, so that every reading costs the same. */
const open: Setup = { ...closed, open: new Set(system.parts.map(({ id }) => id)) };
const isolated = isolate(identify(open, 'spur').next).next;
const tester = (terminal: string): Test => ({
  kind: 'reads',
  instrument: 'tester',
  between: [terminal, 'spur/N'],
});
/** The call for hot water, in its order, and what can break it. */
const chain = ['programmer/HW-ON', 'cyl-stat/COM', 'cyl-stat/CALL', 'cut-out/OUT', 'water-valve/brown'].map(
  tester,
);
const breaks = enterAll(
  bench,
  open,
  [
    'programmer: hot-water on open',
    'wire: programmer/HW-ON strip/4',
    'cyl-stat: call open',
    'cut-out: failed open',
    'wire: strip/6 water-valve/brown',
    'water-valve: motor dead',
  ].map((id) => fault(where, id)),
);

describe('what a test costs', () => {
  test('is always more than nothing; a look costs least, and a cover that is still on adds to a reading', () => {
    for (const setup of [closed, open, isolated]) {
      for (const one of testsNow(setup)) expect(costOf(setup, one)).toBeGreaterThan(0);
    }
    const dearest = Math.max(...looks(closed).map((one) => costOf(closed, one)));
    const reading = tester('water-valve/brown');
    expect(dearest).toBeLessThan(costOf(open, reading));
    expect(costOf(open, reading)).toBeLessThan(costOf(closed, reading));
    expect(coversOn(closed, reading)).toEqual(['water-valve', 'spur']);
    expect(coversOn(open, reading)).toEqual([]);
    for (const one of looks(closed)) expect(coversOn(closed, one)).toEqual([]);
  });

  test('a live reading costs more than a dead one', () => {
    const dead: Test = { kind: 'reads', instrument: 'continuity', between: ['strip/5', 'cut-out/IN'] };
    expect(costOf(isolated, dead)).toBeLessThan(costOf(open, tester('cut-out/IN')));
  });
});

describe('the next test', () => {
  test('is a look at first: it costs little and tells much', () => {
    const worlds = enterAll(bench, closed, failureCandidates(system, wires));
    const [best, ...others] = nextTests(closed, worlds);
    expect(must(best).test.kind).not.toBe('reads');
    for (const other of others) {
      expect(other.gain / other.cost).toBeLessThanOrEqual(must(best).gain / must(best).cost);
    }
  });

  test('tells nothing when one candidate is left', () => {
    expect(nextTests(open, breaks.slice(0, 1))).toEqual([]);
    expect(halfSplit(open, breaks.slice(0, 1))).toBeUndefined();
  });

  test('of six breaks in a row the half-split tests in the middle', () => {
    const half = must(halfSplit(open, breaks, chain));
    expect(half.test).toEqual(tester('cyl-stat/CALL'));
    expect(half.most).toBe(3);
    // Three against three: one bit.
    expect(half.gain).toBeCloseTo(1, 12);
  });

  test('tells what it promises: the bits before less the bits left, averaged over the answers', () => {
    const worlds = enterAll(bench, open, failureCandidates(system, wires)).slice(0, 60);
    const among = worlds.map((_, k) => k);
    const answers = answersOf(open, worlds, testsNow(open));
    expect(answers.length).toBeGreaterThan(20);
    for (const one of answers) {
      if (one.of.some((own) => own.length > 1)) continue;
      const left = branchesOf(one, among).reduce((sum, b) => sum + b.share * Math.log2(b.left.length), 0);
      expect(gainOf(one, among)).toBeCloseTo(Math.log2(among.length) - left, 9);
    }
  });
});

test('answers worked out together are those asked one by one, whichever instrument was there before', () => {
  const worlds = enterAll(bench, open, failureCandidates(system, wires));
  const pairs = system.nodes.slice(0, system.terminals).map((name) => [name, 'spur/E'] as const);
  const tests = pairs.flatMap((between): Test[] =>
    (['volts', 'tester'] as const).map((instrument) => ({ kind: 'reads', instrument, between })),
  );
  for (const { test: asked, of } of answersOf(open, worlds, tests)) {
    const known = new Map<string, number>();
    worlds.forEach(({ stands }, world) => {
      if (stands.length > 1) return;
      const outcome = String(outcomeAt(open, must(stands[0]), asked));
      const answer = must(must(of[world])[0]);
      expect(known.get(outcome) ?? answer).toBe(answer);
      known.set(outcome, answer);
    });
    if (asked.kind === 'reads' && asked.instrument === 'tester') {
      expect(new Set(known.values()).size).toBe(known.size);
    }
  }
});

/** The least expected cost there is, by trying everything: the oracle for small sets. */
function least(setup: Setup, worlds: readonly World[], tests: readonly Test[]): number {
  if (worlds.length < 2) return 0;
  let best = Number.POSITIVE_INFINITY;
  for (const one of tests) {
    const answers = new Map<string, World[]>();
    for (const world of worlds) {
      const shown = String(outcomeAt(setup, must(world.stands[0]), one));
      answers.set(shown, [...(answers.get(shown) ?? []), world]);
    }
    if (answers.size < 2) continue;
    let cost = costOf(setup, one);
    for (const left of answers.values()) cost += (left.length / worlds.length) * least(setup, left, tests);
    best = Math.min(best, cost);
  }
  return best === Number.POSITIVE_INFINITY ? 0 : best;
}

describe('the best strategy', () => {
  test('finds one of six breaks in a row in 16 tests for 6 candidates', () => {
    // By hand: three against three, then one against two, then one against one: (2 · 2 + 4 · 3) / 6.
    const plan = bestPlan(open, breaks, chain);
    expect(plan.tests).toBeCloseTo(16 / 6, 12);
    expect(plan.left).toBe(1);
    expect(plan.cost).toBeCloseTo((16 / 6) * costOf(open, must(chain[0])), 12);
  });

  test('costs the least there is for up to five candidates', () => {
    const some = [...looks(closed), ...chain, tester('water-valve/orange'), tester('heating-valve/brown')];
    const all = enterAll(bench, closed, failureCandidates(system, wires)).filter(
      ({ stands }) => stands.length === 1,
    );
    const set = fc.uniqueArray(fc.constantFrom(...all), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(set, (worlds) => {
        expect(bestPlan(closed, worlds, some).cost).toBeCloseTo(least(closed, worlds, some), 9);
      }),
      { seed, numRuns: 40 },
    );
  });

  test('followed to its end settles each candidate that it says it settles', () => {
    const worlds = enterAll(bench, open, failureCandidates(system, wires));
    const tests = testsNow(open);
    for (const truth of worlds.filter((_, k) => k % 7 === 0)) {
      let left = worlds;
      for (let asked = 0; ; asked++) {
        expect(asked).toBeLessThan(20);
        const [next] = nextTests(open, left, tests);
        if (!next) break;
        const outcome = outcomeAt(open, must(truth.stands[0]), next.test);
        const after = consistent(open, left, { test: next.test, outcome });
        expect(after.map(({ candidate }) => candidate.id)).toContain(truth.candidate.id);
        if (after.length === left.length) break;
        left = after;
      }
      expect(left.length).toBeLessThan(worlds.length / 2);
    }
  });
});
