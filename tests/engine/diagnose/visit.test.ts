import { describe, expect, test } from 'vitest';
import { type Breach, breachSays } from '../../../src/engine/diagnose/breach.ts';
import { costs } from '../../../src/engine/diagnose/costs.ts';
import { arrive, DEAD_PAIRS, energised, provedDead, type Setup } from '../../../src/engine/diagnose/setup.ts';
import {
  bridge,
  type Done,
  isolate,
  land,
  lever,
  lift,
  lockOff,
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
import { call, fault, site, Visit } from './callout.ts';

const where = site('two-two-ports-unvented');
const begin = arrive(where.system, where.wires, { supply: 'on', ...call.water });

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
const safely = [isolate, lockOff, proveTester, ...pairs, proveTester];

describe('safe isolation', () => {
  test('isolate, lock, prove, test every pair and prove again: then a hand may go in, and nothing is held against it', () => {
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
    ['the supply off but not locked', 'not-locked', [isolate, cover, hand]],
    ['the tester never proved', 'tester-not-proved', [isolate, lockOff, cover, hand]],
    ['a pair left out', 'pairs-left-out', [isolate, lockOff, proveTester, ...pairs.slice(1), cover, hand]],
    ['the tester not proved again', 'tester-not-proved-again', [...safely.slice(0, -1), cover, hand]],
  ])('a hand in with %s is a breach', (_, breach, acts) => {
    expect(play(...acts).breaches).toEqual([breach]);
  });

  test('a dead test with a tester that was not proved is told at once', () => {
    expect(play(isolate, lockOff, ...pairs.slice(0, 1)).breaches).toEqual(['tester-not-proved']);
  });

  test('a dead test or a lock with the supply on proves nothing', () => {
    const { setup } = play(lockOff, proveTester, ...pairs, proveTester, isolate);
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
    expect(play(isolate, cover, on).breaches).toEqual(['live-before-dead']);
    expect(play(...safely, cover, on).breaches).toEqual([]);
  });

  test('continuity and ohms on a live circuit are a breach and show nothing', () => {
    for (const instrument of ['continuity', 'ohms'] as const) {
      expect(measureWith(begin, instrument).breaches).toEqual(['continuity-live']);
      const visit = new Visit(where, fault(where, 'pump: dead'));
      expect(visit.read(instrument, 'pump/L', 'pump/N')).toBe('refused');
    }
    expect(measureWith(begin, 'tester').breaches).toEqual([]);
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
  });
});
