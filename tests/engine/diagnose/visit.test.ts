import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { perform } from '../../../src/engine/diagnose/act.ts';
import { type Breach, breachSays } from '../../../src/engine/diagnose/breach.ts';
import { costs } from '../../../src/engine/diagnose/costs.ts';
import type { Instrument } from '../../../src/engine/diagnose/instrument.ts';
import { isolationActs } from '../../../src/engine/diagnose/isolation.ts';
import { arrive, DEAD_PAIRS, energised, provedDead, type Setup } from '../../../src/engine/diagnose/setup.ts';
import {
  bridge,
  type Done,
  identify,
  isolate,
  land,
  lever,
  lift,
  lockOff,
  look,
  measureWith,
  operate,
  proveTester,
  replaceCover,
  resetCutOut,
  swap,
  takeCover,
  testDead,
  unbridge,
} from '../../../src/engine/diagnose/visit.ts';
import { seed } from '../support/random.ts';
import { call, fault, site, Visit } from './callout.ts';

const where = site('two-two-ports-unvented');
const begin = arrive(where.system, where.wires, { supply: 'on', ...call.water });

/** All covers off. */
const bare: Setup = { ...begin, open: new Set(where.system.parts.map(({ id }) => id)) };

/** Does one thing after another; the last setup and every breach on the way. */
function play(...acts: readonly ((setup: Setup) => Done)[]): { setup: Setup; breaches: Breach[] } {
  let setup = begin;
  const breaches: Breach[] = [];
  for (const act of acts) {
    const done = act(setup);
    breaches.push(...done.breaches);
    setup = done.next;
  }
  return { setup, breaches };
}

const cover = (setup: Setup) => takeCover(setup, 'strip');
const hand = (setup: Setup) => lift(setup, ['water-valve/orange', 'strip/7']);
const pairs = DEAD_PAIRS.map((pair) => (setup: Setup) => testDead(setup, pair));
const off = (setup: Setup) => operate(setup, { supply: 'off' });
const trace = (setup: Setup) => identify(setup, 'spur');
const reads = (instrument: Instrument, a = 'pump/L', b = 'pump/N') =>
  ({ kind: 'reads', instrument, between: [a, b] }) as const;
const safely = [trace, isolate, lockOff, proveTester, ...pairs, proveTester];

describe('safe isolation', () => {
  test('identify, isolate, lock, prove, test every pair and prove again: then a hand may go in, and nothing is held against it', () => {
    const { setup, breaches } = play(...safely, cover, hand);
    expect(breaches).toEqual([]);
    expect(provedDead(setup)).toBe(true);
    expect(energised(setup)).toBe(false);
  });

  test('a cover off with the supply on is a breach, and the cover comes off all the same', () => {
    const { setup, breaches } = play(cover);
    expect(breaches).toEqual(['cover-off-live']);
    expect([...setup.open]).toEqual(['strip']);
  });

  test.each<[string, Breach, readonly ((setup: Setup) => Done)[]]>([
    ['the supply on', 'hand-in-live', [hand]],
    ['the supply never traced', 'not-identified', [off, hand]],
    ['the supply off but not locked', 'not-locked', [trace, isolate, cover, hand]],
    ['the tester never proved', 'tester-not-proved', [trace, isolate, lockOff, cover, hand]],
    ['a pair left out', 'pairs-left-out', [...safely.slice(0, 4), ...pairs.slice(1), cover, hand]],
    ['the tester not proved again', 'tester-not-proved-again', [...safely.slice(0, -1), cover, hand]],
  ])('a hand in with %s is a breach', (_, breach, acts) => {
    expect(play(...acts).breaches).toEqual([breach]);
  });

  test('a dead test with a tester that was not proved is told at once', () => {
    expect(play(trace, isolate, lockOff, ...pairs.slice(0, 1)).breaches).toEqual(['tester-not-proved']);
  });

  test('a dead test or a lock with the supply on proves nothing', () => {
    const { setup } = play(trace, lockOff, proveTester, ...pairs, proveTester, isolate);
    expect(provedDead(setup)).toBe(false);
    expect(setup.proof.locked).toBe(false);
    expect(setup.proof.dead.size).toBe(0);
  });

  test('switching on again ends the isolation: the next hand in needs all of it anew', () => {
    const on = (setup: Setup) => operate(setup, { supply: 'on' });
    expect(play(...safely, cover, on, isolate, hand).breaches).toEqual(['not-locked']);
    expect(play(...safely, cover, on, hand).breaches).toEqual(['hand-in-live']);
  });

  test('a live test comes after a dead one: switching on with a cover off before any is a breach', () => {
    // Common practice: live tests only after an attempt to find the fault dead (fault table of the course).
    const on = (setup: Setup) => operate(setup, { supply: 'on' });
    expect(play(trace, isolate, cover, on).breaches).toEqual(['live-before-dead']);
    expect(play(...safely, cover, on).breaches).toEqual([]);
  });

  test('continuity and ohms on a live circuit are a breach and show nothing', () => {
    for (const instrument of ['continuity', 'ohms'] as const) {
      expect(measureWith(bare, reads(instrument)).breaches).toEqual(['continuity-live']);
      const visit = new Visit(where, fault(where, 'pump: dead'));
      expect(visit.read(instrument, 'pump/L', 'pump/N')).toBe('refused');
    }
    expect(measureWith(bare, reads('tester')).breaches).toEqual([]);
  });

  test('only a supply that was traced is switched off', () => {
    expect(energised(play(isolate).setup)).toBe(true);
    expect(energised(play(trace, isolate).setup)).toBe(false);
  });

  test('with two supplies, the one that was missed stays on, and a cover off is a breach', () => {
    const twin = site('twin-immersion');
    const here = arrive(twin.system, twin.wires, { 'night-supply': 'on', 'day-supply': 'on' });
    const night = isolate(identify(here, 'night-isolator').next).next;
    expect(energised(night)).toBe(true);
    expect(takeCover(night, 'day-isolator').breaches).toEqual(['cover-off-live']);
    const both = isolate(identify(night, 'day-isolator').next).next;
    expect(energised(both)).toBe(false);
    expect(takeCover(both, 'day-isolator').breaches).toEqual([]);
    // Off by chance, and never traced: somebody could switch it on.
    const chance = isolate(identify(operate(here, { 'day-supply': 'off' }).next, 'night-isolator').next).next;
    expect(takeCover(chance, 'day-isolator').breaches).toEqual(['not-identified']);
  });

  test('pairs tested before the tester was proved do not count: they are tested again', () => {
    const { setup } = play(trace, isolate, lockOff, ...pairs, proveTester, proveTester);
    expect(provedDead(setup)).toBe(false);
    expect(isolationActs(setup).filter((act) => act.do === 'dead-test').length).toBe(3);
  });

  test('what is missing to a full isolation, done in its order, completes it without a breach, from wherever it is', () => {
    const steps = [trace, isolate, lockOff, proveTester, ...pairs, off];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...steps), { maxLength: 8 }), (some) => {
        let { setup } = play(...some);
        for (const act of isolationActs(setup)) {
          const { next, breaches } = perform(setup, act);
          expect(breaches).toEqual([]);
          setup = next;
        }
        expect(provedDead(setup)).toBe(true);
        expect(isolationActs(setup)).toEqual([]);
        expect([...cover(setup).breaches, ...hand(setup).breaches]).toEqual([]);
      }),
      { seed, numRuns: 300 },
    );
  });

  test('no reading through a cover: it comes off first', () => {
    const test = reads('tester', 'strip/7', 'spur/N');
    expect(() => perform(begin, { do: 'test', test })).toThrow('take the cover off first: ');
    expect(() => measureWith(begin, test)).toThrow(/wiring centre|terminal strip|strip/i);
    const half = takeCover(begin, 'strip').next;
    expect(() => measureWith(half, test)).toThrow(/^take the cover off first: fused spur$/);
    expect(measureWith(takeCover(half, 'spur').next, test).cost).toBe(costs.liveTest);
    expect(look(begin)).toEqual({ next: begin, cost: costs.look, breaches: [] });
  });

  test('every breach has its sentence', () => {
    for (const says of Object.values(breachSays)) expect(says).toMatch(/^You .*\.$/);
  });
});

describe('actions', () => {
  test('each one costs something', () => {
    const acts = [
      ...safely,
      cover,
      hand,
      resetCutOut,
      (setup: Setup) => lever(setup, 'water-valve'),
      (setup: Setup) => swap(setup, 'pump'),
      (setup: Setup) => bridge(setup, 'strip/1', 'strip/7'),
      (setup: Setup) => replaceCover(setup, 'strip'),
    ];
    for (const act of acts) expect(act(begin).cost).toBeGreaterThan(0);
  });

  test('looking costs least, a dead test less than a live one, a part changed for nothing most', () => {
    expect(Math.min(...Object.values(costs))).toBe(costs.look);
    expect(costs.deadTest).toBeLessThan(costs.liveTest);
    expect(Math.max(...Object.values(costs))).toBe(costs.swap);
  });

  test('what is lifted can be landed, what is bridged taken out, and then it is as before', () => {
    const wire = ['water-valve/orange', 'strip/7'] as const;
    const { setup } = play(
      hand,
      (now) => land(now, wire),
      (now) => bridge(now, 'strip/1', 'strip/7'),
      (now) => unbridge(now, 'strip/7', 'strip/1'),
    );
    expect(setup).toEqual(begin);
  });

  test('a new part mends its failure; another new part does not', () => {
    const visit = new Visit(where, fault(where, 'water-valve: motor dead'));
    visit.set(call.water);
    visit.do((setup) => swap(setup, 'heating-valve'));
    expect(visit.warms('coil')).toBe(false);
    visit.do((setup) => swap(setup, 'water-valve'));
    expect(visit.warms('coil')).toBe(true);
  });

  test('a new fuse blows again while the short is there', () => {
    const visit = new Visit(where, fault(where, 'pump: live case'));
    visit.set(call.water);
    expect(visit.read('tester', 'spur/L', 'spur/N')).toBe(0);
    visit.do((setup) => swap(setup, 'spur'));
    expect(visit.read('tester', 'spur/L', 'spur/N')).toBe(0);
    visit.do((setup) => swap(setup, 'pump'));
    expect(visit.read('tester', 'spur/L', 'spur/N')).toBe(0);
    visit.do((setup) => swap(setup, 'spur'));
    expect(visit.read('tester', 'spur/L', 'spur/N')).toBe(230);
    expect(visit.warms('coil')).toBe(true);
  });

  test('names that are not there are errors that say which', () => {
    expect(() => operate(begin, { room: 'hot' })).toThrow('input "room" has no setting "hot"');
    expect(() => takeCover(begin, 'lid')).toThrow('no part "lid"');
    expect(() => lift(begin, ['strip/1', 'strip/2'])).toThrow('no wire');
    expect(() => bridge(begin, 'strip/1', 'strip/99')).toThrow('no terminal "strip/99"');
    expect(() => lever(begin, 'boiler')).toThrow('"boiler" has no lever');
    expect(() => identify(begin, 'pump')).toThrow('"pump" is no supply');
    expect(() => measureWith(bare, reads('volts', 'pump/X'))).toThrow('no terminal "pump/X"');
  });
});
