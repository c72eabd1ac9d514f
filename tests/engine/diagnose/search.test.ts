import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Act } from '../../../src/engine/diagnose/act.ts';
import { allCandidates, type Callout } from '../../../src/engine/diagnose/callout.ts';
import type { Candidate } from '../../../src/engine/diagnose/candidate.ts';
import { sameOutcome } from '../../../src/engine/diagnose/evidence.ts';
import { begin, go, observed, type Visit } from '../../../src/engine/diagnose/replay.ts';
import { searchOn, searchSteps, startSearch, startSteps } from '../../../src/engine/diagnose/search.ts';
import { complaintsOf, sharing } from '../../../src/engine/diagnose/symptom.ts';
import { coversOn, testsNow } from '../../../src/engine/diagnose/tests.ts';
import { settingsOf } from '../../../src/engine/model/system.ts';
import { must } from '../support/must.ts';
import { seed } from '../support/random.ts';
import { call, fault, type Site, site } from './callout.ts';

const places = ['three-port', 'two-two-ports-unvented', 'twin-immersion'].map((id) => {
  const where = site(id);
  return { ...where, candidates: allCandidates(where.system, where.wires) };
});
const where = must(places[1]);

const calloutFor = ({ system, wires, bench }: Site, one: Candidate, chance: number): Callout => ({
  system,
  wires,
  fault: one,
  complaints: complaintsOf(bench, wires, one, chance),
  found: { supply: 'on', ...call.both },
  seed: chance,
});

/** An act out of three numbers, one that is possible as the visit stands. */
function someAct({ system, wires }: Site, { setup }: Visit, [what, detail]: readonly [number, number]): Act {
  const part = must(system.parts[detail % system.parts.length]).id;
  const wire = must(wires[detail % wires.length]);
  const tests = testsNow(setup);
  const asked = must(tests[detail % tests.length]);
  const covered = coversOn(setup, asked)[0];
  const look: Act = covered === undefined ? { do: 'test', test: asked } : { do: 'open', part: covered };
  const acts: Act[] = [
    { do: 'operate', settings: settingsOf(system, detail % 2 ** system.inputs.length) },
    { do: 'lift', wire },
    { do: 'swap', part },
    { do: 'prove' },
    { do: 'dead-test', pair: 'L-N' },
    { do: 'identify', supply: must(system.parts[system.supply.part]).id },
    { do: 'isolate' },
  ];
  return acts[what] ?? look;
}

describe('the search along a visit', () => {
  test('keeps the true fault, and of those that never race just the ones whose own visit would have shown the same', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.nat(9999),
        fc.nat(9999),
        fc.array(fc.tuple(fc.nat(14), fc.nat(9999)), { minLength: 1, maxLength: 12 }),
        (here, pick, chance, steps) => {
          const { bench } = here;
          const truth = must(here.candidates[pick % here.candidates.length]);
          const some = here.candidates.filter((one, k) => one === truth || k % 16 === pick % 16);
          const callout = calloutFor(here, truth, chance);
          let visit = begin(bench, callout);
          let search = startSearch(bench, callout, some);
          for (const step of steps) {
            visit = go(bench, callout, visit, someAct(here, visit, step));
            search = searchOn(bench, search, must(visit.entries.at(-1)));
          }
          const left = new Set(search.worlds.map(({ candidate }) => candidate));
          expect(left).toContain(truth);
          expect(search.setup).toEqual(visit.setup);
          const sharers = new Set(sharing(bench, some, callout).map(({ candidate }) => candidate));
          for (const one of some) {
            // The oracle: a visit to a house with this fault in it, step by step the same.
            let own = begin(bench, { ...callout, fault: one });
            let [agrees, races] = [sharers.has(one), false];
            for (const { act, outcome } of visit.entries) {
              const asked = observed(own.setup, act);
              own = go(bench, { ...callout, fault: one }, own, act);
              const shown = own.entries.at(-1)?.outcome;
              if (asked && !sameOutcome(asked, must(outcome), must(shown))) agrees = false;
              races ||= mayRace(here, one, callout, own);
            }
            if (!races) expect([one.id, left.has(one)]).toEqual([one.id, agrees]);
          }
        },
      ),
      { seed, numRuns: 60 },
    );
  });

  test('told in steps it comes to the same, and each step says how far it has come', () => {
    const callout = calloutFor(where, fault(where, 'cyl-stat: call open'), 7);
    const start = run(startSteps(where.bench, callout, where.candidates));
    expect(start.result).toEqual(startSearch(where.bench, callout, where.candidates));
    expect(start.result.worlds.length).toBeGreaterThan(10);
    const entry = { act: { do: 'operate', settings: call.none } } as const;
    const moved = run(searchSteps(where.bench, start.result, entry));
    expect(moved.result).toEqual(searchOn(where.bench, start.result, entry));
    for (const { shares } of [start, moved]) {
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
      expect(shares.at(-1)).toBe(1);
    }
    expect(start.shares.length).toBeGreaterThan(10);
  });

  test('what changes nothing in the circuit costs nothing: every world is the same as before', () => {
    const callout = calloutFor(where, fault(where, 'cyl-stat: call open'), 7);
    const start = startSearch(where.bench, callout, where.candidates);
    const acts: Act[] = [
      { do: 'identify', supply: 'spur' },
      { do: 'prove' },
      { do: 'open', part: 'strip' },
      { do: 'operate', settings: { supply: 'on' } },
    ];
    for (const act of acts) expect(searchOn(where.bench, start, { act }).worlds).toBe(start.worlds);
    const off = searchOn(where.bench, start, { act: { do: 'operate', settings: { supply: 'off' } } });
    expect(off.worlds).not.toBe(start.worlds);
  });

  test('a new fuse holds once the short is mended, and blows again where it is not', () => {
    const short = fault(where, 'pump: live case');
    const other = fault(where, 'water-valve: live case');
    const callout = { ...calloutFor(where, short, 7), complaints: [] };
    const start = startSearch(where.bench, callout, [short, other]);
    const swap = (part: string) => ({ act: { do: 'swap', part } }) as const;
    const after = [swap('pump'), swap('spur')].reduce(
      (now, entry) => searchOn(where.bench, now, entry),
      start,
    );
    const blown = (search: typeof start) =>
      search.worlds.map(({ stands }) => stands.some((stand) => stand.blown));
    expect(blown(start)).toEqual([true, true]);
    expect(blown(after)).toEqual([false, true]);
  });

  test('a dead test that shows volts is evidence too', () => {
    const callout = calloutFor(where, fault(where, 'cyl-stat: call open'), 7);
    const start = startSearch(where.bench, callout, where.candidates);
    const entry = { act: { do: 'dead-test', pair: 'L-N' }, outcome: 230 } as const;
    const left = (outcome: number) => searchOn(where.bench, start, { ...entry, outcome }).worlds;
    const blown = start.worlds.filter(({ stands }) => stands.every((stand) => stand.blown));
    // Volts at the supply's terminals: not where the fuse has blown. No volts with the supply on: there only, or where the supply itself lets nothing through.
    expect(blown.length).toBeGreaterThan(0);
    expect(left(230).filter((world) => blown.includes(world))).toEqual([]);
    expect(left(0)).toEqual(expect.arrayContaining(blown));
    expect(left(230).length).toBeGreaterThan(left(0).length);
  });
});

/** Whether a candidate may stand in several ways as the visit now is: then the oracle, which takes one, says too little. */
function mayRace({ bench }: Site, one: Candidate, callout: Callout, visit: Visit): boolean {
  let all = startSearch(bench, { ...callout, complaints: [] }, [one]);
  let races = must(all.worlds[0]).stands.length > 1;
  for (const { act } of visit.entries) {
    all = searchOn(bench, all, { act });
    races ||= must(all.worlds[0]).stands.length > 1;
  }
  return races;
}

/** Runs steps to their end. */
function run<Result>(steps: Generator<number, Result>): { shares: number[]; result: Result } {
  const shares: number[] = [];
  for (;;) {
    const { done, value } = steps.next();
    if (done) return { shares, result: value };
    shares.push(value);
  }
}
