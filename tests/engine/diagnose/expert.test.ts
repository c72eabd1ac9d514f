import { describe, expect, test } from 'vitest';
import { type Act, perform } from '../../../src/engine/diagnose/act.ts';
import { alikeGroups } from '../../../src/engine/diagnose/alike.ts';
import { allCandidates, type Callout } from '../../../src/engine/diagnose/callout.ts';
import type { Candidate } from '../../../src/engine/diagnose/candidate.ts';
import { costs } from '../../../src/engine/diagnose/costs.ts';
import { enterAll } from '../../../src/engine/diagnose/evidence.ts';
import {
  type Allowed,
  expected,
  expertRoute,
  nextStep,
  type Route,
} from '../../../src/engine/diagnose/expert.ts';
import { needsDead } from '../../../src/engine/diagnose/instrument.ts';
import { isolationActs } from '../../../src/engine/diagnose/isolation.ts';
import { begin, go, replay } from '../../../src/engine/diagnose/replay.ts';
import { arrive } from '../../../src/engine/diagnose/setup.ts';
import { complaintsOf, sharing } from '../../../src/engine/diagnose/symptom.ts';
import { must } from '../support/must.ts';
import { call, fault, type Site, site } from './callout.ts';

/** A callout with a fault, found as it was noticed. */
function callTo({ bench, system, wires }: Site, one: Candidate): Callout {
  const complaints = complaintsOf(bench, wires, one, 1);
  return { system, wires, fault: one, complaints, found: complaints[0]?.settings ?? {}, seed: 1 };
}

const actsOf = ({ entries }: Route) =>
  entries.flatMap(({ step }) => [...step.acts, { do: 'test', test: step.test } as const]);

const systems = ['three-port', 'two-two-ports', 'gravity-hot-water', 'twin-immersion', 'combi-volt-free'];
/** Some faults of a system that show, from all over the list. */
function some(where: Site, count: number): Candidate[] {
  const all = allCandidates(where.system, where.wires);
  const shows = all.filter((one) => complaintsOf(where.bench, where.wires, one, 1, 1).length > 0);
  return Array.from({ length: count }, (_, k) => must(shows[Math.floor(((k + 0.5) * shows.length) / count)]));
}

/** Routes of some faults of a system, found once for all that is asked of them. */
const known = new Map<string, readonly { callout: Callout; route: Route }[]>();
function routesOf(id: string): readonly { callout: Callout; route: Route }[] {
  const where = site(id);
  const all = allCandidates(where.system, where.wires);
  const found =
    known.get(id) ??
    some(where, 4).map((one) => {
      const callout = callTo(where, one);
      return { callout, route: expertRoute(where.bench, callout, all) };
    });
  known.set(id, found);
  return found;
}

describe('the route of a good engineer', () => {
  test.each(systems)('works safely, and what it costs is what its acts cost: %s', (id) => {
    for (const { callout, route } of routesOf(id)) {
      const { entries } = replay(site(id).bench, callout, actsOf(route));
      expect(entries.flatMap(({ breaches }) => breaches)).toEqual([]);
      expect(route.cost).toBe(entries.reduce((sum, { cost }) => sum + cost, 0));
      expect(route.tests).toBe(entries.filter(({ act }) => act.do === 'test').length);
    }
  });

  test.each(systems)('never loses the truth, and ends when nothing can tell what is left apart: %s', (id) => {
    for (const { callout, route } of routesOf(id)) {
      const { left, entries } = route;
      expect(left.map((one) => one.id)).toContain(callout.fault.id);
      expect(alikeGroups(site(id).bench, callout.wires, left), callout.fault.id).toHaveLength(1);
      entries.forEach(({ before, after }, k) => {
        expect(after).toBeLessThanOrEqual(before);
        if (k > 0) expect(before).toBe(must(entries[k - 1]).after);
      });
    }
  });

  test('looks before it opens anything', () => {
    const where = site('three-port');
    const all = allCandidates(where.system, where.wires);
    const { entries } = expertRoute(where.bench, callTo(where, fault(where, 'pump: dead')), all);
    expect(must(entries[0]).step.test.kind).not.toBe('reads');
    expect(must(entries[0]).step.acts).toEqual([]);
  });
});

describe('what somebody may do', () => {
  const where = site('gravity-hot-water');
  const all = allCandidates(where.system, where.wires);
  const routeOf = (allow: Allowed, one: Candidate) =>
    expertRoute(where.bench, callTo(where, one), all, { allow });

  test('without being qualified: the controls and looks, no cover, no meter', () => {
    for (const one of some(where, 2)) {
      for (const act of actsOf(routeOf('looks', one))) {
        expect(['operate', 'test']).toContain(act.do);
        if (act.do === 'test') expect(act.test.kind).not.toBe('reads');
      }
    }
  });

  test('dead tests only: the covers are on again before the supply is', () => {
    for (const one of some(where, 2)) {
      const callout = callTo(where, one);
      let visit = begin(where.bench, callout);
      for (const act of actsOf(routeOf('dead', one))) {
        visit = go(where.bench, callout, visit, act);
        const { inputs, open } = visit.setup;
        if (inputs & 1) expect(open.size).toBe(0);
        if (act.do === 'test' && act.test.kind === 'reads') {
          expect(needsDead(act.test.instrument)).toBe(true);
        }
      }
    }
  });

  test('dead tests only: covers go on again before the supply comes on; who may test live leaves them off', () => {
    const { bench, system, wires } = where;
    const arrived = arrive(system, wires, { supply: 'on', 'hot-water': 'on' });
    const open: Act[] = [...isolationActs(arrived), { do: 'open', part: 'strip' }];
    const setup = open.reduce((now, act) => perform(now, act).next, arrived);
    const two = ['boiler: does not fire', 'pump: dead'].map((id) => fault(where, id));
    const worlds = enterAll(bench, setup, two);
    const acts = (allow: Allowed) => must(nextStep(bench, setup, worlds, { allow })).acts;
    expect(acts('dead')[0]).toEqual({ do: 'close', part: 'strip' });
    expect(acts('dead')[1]).toMatchObject({ do: 'operate', settings: { supply: 'on' } });
    expect(acts('live')).toEqual([acts('dead')[1]]);
  });

  test('more means that no more is left at the end', () => {
    for (const one of some(where, 2)) {
      const left = (['looks', 'dead', 'live'] as const).map((allow) => routeOf(allow, one).left.length);
      expect(left).toEqual([...left].sort((a, b) => b - a));
    }
  });
});

describe('the next step', () => {
  const where = site('two-two-ports');
  const { bench, system, wires } = where;
  const setup = arrive(system, wires, { supply: 'on', ...call.water });
  const worlds = (...ids: string[]) =>
    enterAll(
      bench,
      setup,
      ids.map((id) => fault(where, id)),
    );

  test('is none when one candidate is left', () => {
    expect(nextStep(bench, setup, worlds('pump: dead'))).toBeUndefined();
    expect(nextStep(bench, setup, [])).toBeUndefined();
  });

  test('is a look where a look will do', () => {
    const step = must(nextStep(bench, setup, worlds('pump: dead', 'boiler: does not fire')));
    expect(step).toMatchObject({ acts: [], cost: costs.look, most: 1 });
    expect(step.test.kind).toBe('works');
    expect(step.gain).toBeCloseTo(1, 12);
  });

  test('works a control where that shows it: nothing calls for heating yet', () => {
    const step = must(
      nextStep(bench, setup, worlds('heating-valve: motor dead', 'programmer: hot-water off open')),
    );
    expect(step.acts).toEqual([
      { do: 'operate', settings: expect.objectContaining({ heating: 'on', room: 'calling' }) },
    ]);
    expect(step.cost).toBe(costs.operate + costs.look);
  });

  test('isolates in full before a cover comes off, where looks tell nothing', () => {
    const two = worlds('cyl-stat: call open', 'wire: cyl-stat/CALL strip/5');
    const step = must(nextStep(bench, setup, two));
    const done = step.acts.map((act) => act.do);
    expect(done.slice(0, 8)).toEqual([
      'identify',
      'isolate',
      'lock',
      'prove',
      'dead-test',
      'dead-test',
      'dead-test',
      'prove',
    ]);
    expect(done).toContain('open');
    expect(nextStep(bench, setup, two, { allow: 'looks' })).toBeUndefined();
  });
});

describe('what a good engineer is expected to need', () => {
  const where = site('two-two-ports');
  const { bench, system, wires } = where;
  const found = { supply: 'on', ...call.water };
  const expectedOf = (...ids: string[]) => {
    const all = ids.map((id) => fault(where, id));
    return expected(bench, { system, wires, found }, enterAll(bench, arrive(system, wires, found), all));
  };

  test('is nothing for one candidate, and one look for two that a look tells apart', () => {
    expect(expectedOf('pump: dead')).toEqual({ tests: 0, cost: 0, left: 1 });
    expect(expectedOf('pump: dead', 'boiler: does not fire')).toEqual({
      tests: 1,
      cost: costs.look,
      left: 1,
    });
  });

  test('leaves together what nothing tells apart', () => {
    const where2 = site('three-port');
    const found2 = { supply: 'on' };
    const setup = arrive(where2.system, where2.wires, found2);
    const all = allCandidates(where2.system, where2.wires);
    const groups = alikeGroups(where2.bench, where2.wires, all);
    const alike = must(groups.find((group) => group.length > 1));
    const { tests, left } = expected(
      where2.bench,
      callTo(where2, must(alike[0])),
      enterAll(where2.bench, setup, alike),
    );
    expect({ tests, left }).toEqual({ tests: 0, left: alike.length });
  });

  test.each(['combi-volt-free', 'twin-immersion'])(
    'is about what its routes take on the average: %s',
    (id) => {
      // The plan takes no account of the order in which settings were tried; the routes do.
      const site2 = site(id);
      const all = allCandidates(site2.system, site2.wires);
      const callout = callTo(site2, must(some(site2, 3)[1]));
      const worlds = sharing(site2.bench, all, callout);
      const plan = expected(site2.bench, callout, worlds);
      const routes = worlds
        .filter((_, k) => k % 4 === 0)
        .map(({ candidate }) => expertRoute(site2.bench, { ...callout, fault: candidate }, all));
      const mean = (of: (route: Route) => number) =>
        routes.reduce((sum, one) => sum + of(one), 0) / routes.length;
      expect(Math.abs(plan.tests / mean(({ tests }) => tests) - 1)).toBeLessThan(0.25);
      expect(Math.abs(plan.cost / mean(({ cost }) => cost) - 1)).toBeLessThan(0.25);
    },
  );
});
