import { describe, expect, test } from 'vitest';
import type { Act } from '../../../src/engine/diagnose/act.ts';
import { alikeGroups } from '../../../src/engine/diagnose/alike.ts';
import { allCandidates, type Callout } from '../../../src/engine/diagnose/callout.ts';
import type { Candidate } from '../../../src/engine/diagnose/candidate.ts';
import { costs } from '../../../src/engine/diagnose/costs.ts';
import { ask, consistent } from '../../../src/engine/diagnose/evidence.ts';
import { expected, expertRoute } from '../../../src/engine/diagnose/expert.ts';
import { judgeVisit, type Verdict } from '../../../src/engine/diagnose/judge.ts';
import { begin, go, replay } from '../../../src/engine/diagnose/replay.ts';
import { searchOn, startSearch } from '../../../src/engine/diagnose/search.ts';
import { complaintsOf } from '../../../src/engine/diagnose/symptom.ts';
import { must } from '../support/must.ts';
import { call, fault, site } from './callout.ts';

const where = site('two-two-ports-unvented');
const { bench, system, wires } = where;
const candidates = allCandidates(system, wires);
const calloutOf = (one: Candidate): Callout => ({
  system,
  wires,
  fault: one,
  complaints: complaintsOf(bench, wires, one, 3),
  found: { supply: 'on', ...call.water },
  seed: 1,
});
const thermostat = fault(where, 'cyl-stat: call open');
const callout = calloutOf(thermostat);
const judge = (acts: readonly Act[], said: Candidate, of = callout): Verdict =>
  judgeVisit(bench, of, candidates, acts, said);

const route = expertRoute(bench, callout, candidates);
const asTheExpert = route.entries.flatMap(({ step }): Act[] => [
  ...step.acts,
  { do: 'test', test: step.test },
]);
const looks = (kind: 'works' | 'warms', part: string): Act => ({ do: 'test', test: { kind, part } });
const reads = (instrument: 'tester' | 'continuity', a: string, b: string): Act => ({
  do: 'test',
  test: { kind: 'reads', instrument, between: [a, b] },
});

describe('what was said', () => {
  test('done as a good engineer does it, the visit is right, proved, safe, and costs what the route costs', () => {
    const verdict = judge(asTheExpert, thermostat);
    expect(verdict.right).toBe(true);
    expect(verdict.left).toEqual([]);
    expect(verdict.proved).toBe(true);
    expect(verdict.breaches).toEqual([]);
    expect(verdict.needless).toEqual([]);
    expect(verdict.tests).toBe(route.tests);
    expect(verdict.cost).toBe(route.cost);
    expect(verdict.route).toEqual(route);
    const { tests, cost } = expected(bench, callout, startSearch(bench, callout, candidates).worlds);
    expect(verdict.best).toEqual({ tests, cost });
  });

  test('a guess that happens to be right is right and not proved: the others are still possible', () => {
    const verdict = judge([], thermostat);
    expect([verdict.right, verdict.proved, verdict.tests, verdict.cost]).toEqual([true, false, 0, 0]);
    const sharing = startSearch(bench, callout, candidates).worlds;
    expect(verdict.left.length + verdict.alike.length + 1).toBe(sharing.length);
    expect(verdict.left.map(({ id }) => id)).toContain('wire: programmer/HW-ON strip/4');
  });

  test('a wrong answer is wrong however good the evidence', () => {
    const verdict = judge(asTheExpert, fault(where, 'pump: dead'));
    expect([verdict.right, verdict.proved]).toEqual([false, false]);
    expect(verdict.left).toEqual([]);
  });

  test('a fault that nothing can tell from the true one counts as right, and is not held against the proof', () => {
    // Found by the groups of `alike.ts`, which are proved by reading and playing.
    const group = must(
      alikeGroups(bench, wires, candidates).find(
        (some) => some.length > 1 && complaintsOf(bench, wires, must(some[0]), 3).length > 0,
      ),
    );
    const [one, other] = [must(group[0]), must(group[1])];
    const verdict = judge([], other, calloutOf(one));
    expect(verdict.right).toBe(true);
    expect(verdict.alike.map(({ id }) => id)).toEqual(group.slice(1).map(({ id }) => id));
    for (const same of group) expect(verdict.left).not.toContain(same);
  });
});

describe('how it was done', () => {
  test('each breach is told with the act it came with', () => {
    const acts: Act[] = [looks('works', 'pump'), { do: 'open', part: 'strip' }, { do: 'open', part: 'spur' }];
    acts.push(reads('continuity', 'strip/4', 'spur/N'));
    expect(judge(acts, thermostat).breaches).toEqual([
      { entry: 1, breach: 'cover-off-live' },
      { entry: 2, breach: 'cover-off-live' },
      { entry: 3, breach: 'continuity-live' },
    ]);
  });

  test('parts changed that had not failed are named once, the failed one is not', () => {
    const swap = (part: string): Act => ({ do: 'swap', part });
    const swaps = ['pump', 'cyl-stat', 'boiler', 'pump'].map(swap);
    expect(judge(swaps, thermostat).needless).toEqual(['pump', 'boiler']);
    // Changed a second time, it had not failed any more.
    expect(judge([swap('cyl-stat'), swap('cyl-stat')], thermostat).needless).toEqual(['cyl-stat']);
  });

  test('a new fuse is needless unless the old one has blown', () => {
    const short = fault(where, 'pump: live case');
    const fuse: Act = { do: 'swap', part: 'spur' };
    expect(judge([fuse], short, calloutOf(short)).needless).toEqual([]);
    expect(judge([fuse], thermostat).needless).toEqual(['spur']);
  });
});

describe('what each test told', () => {
  const acts: Act[] = [
    looks('works', 'pump'),
    looks('warms', 'coil'),
    { do: 'operate', settings: call.heating },
    looks('works', 'boiler'),
    { do: 'identify', supply: 'spur' },
    { do: 'isolate' },
    { do: 'lock' },
    { do: 'prove' },
    { do: 'dead-test', pair: 'L-N' },
    { do: 'dead-test', pair: 'L-E' },
    { do: 'dead-test', pair: 'N-E' },
    { do: 'prove' },
    { do: 'open', part: 'strip' },
    { do: 'open', part: 'cyl-stat' },
    reads('continuity', 'strip/4', 'cyl-stat/COM'),
  ];
  const verdict = judge(acts, thermostat);

  test('one line for each test, from where the last one left off, and what it ruled out had been possible', () => {
    expect(verdict.trail.map(({ entry }) => entry)).toEqual([0, 1, 3, 14]);
    let search = startSearch(bench, callout, candidates);
    let visit = begin(bench, callout);
    acts.forEach((act, k) => {
      visit = go(bench, callout, visit, act);
      const next = searchOn(bench, search, must(visit.entries[k]));
      const told = verdict.trail.find(({ entry }) => entry === k);
      if (told) {
        expect([told.before, told.after]).toEqual([search.worlds.length, next.worlds.length]);
        expect(told.ruledOut.length).toBe(Math.min(4, told.before - told.after));
        const left = new Set(next.worlds.map(({ candidate }) => candidate));
        const had = search.worlds.map(({ candidate }) => candidate);
        for (const one of told.ruledOut) expect([had.includes(one), left.has(one)]).toEqual([true, false]);
      }
      search = next;
    });
    expect(verdict.cost).toBe(replay(bench, callout, acts).entries.reduce((sum, { cost }) => sum + cost, 0));
  });

  test('where a test told nothing and another would have halved them, that one is shown, and keeps its promise', () => {
    // The second time the same look tells nothing.
    const twice = judge([looks('works', 'pump'), looks('works', 'pump')], thermostat);
    const [, again] = twice.trail;
    expect(must(again).after).toBe(must(again).before);
    const better = must(must(again).better);
    expect(better.step.cost).toBeLessThanOrEqual(1);
    const search = startSearch(bench, callout, candidates);
    const visit = go(bench, callout, begin(bench, callout), looks('works', 'pump'));
    const { setup, worlds } = searchOn(bench, search, must(visit.entries[0]));
    expect(better.step.acts).toEqual([]);
    const asked = better.step.test;
    const outcomes = new Set(worlds.flatMap(({ stands }) => stands.map(ask(setup, asked))));
    const counts = [...outcomes].map((outcome) => consistent(setup, worlds, { test: asked, outcome }).length);
    expect(better.most).toBe(Math.max(...counts));
    // A quarter of a bit at least: of two answers, the likelier leaves at most 96 in 100 (binary entropy, by hand).
    expect(better.most / worlds.length).toBeLessThan(0.96);
  });

  test('nothing better is shown for the first step of a good engineer, nor where only a dearer step would be', () => {
    const [first] = judge(asTheExpert, thermostat).trail;
    expect(must(first).better).toBeUndefined();
    for (const { entry, better } of verdict.trail) {
      if (better) expect(better.step.cost).toBeLessThanOrEqual(entry === 14 ? costs.deadTest : costs.look);
    }
  });
});
