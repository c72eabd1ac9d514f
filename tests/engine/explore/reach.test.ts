import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Frame } from '../../../src/engine/circuit/frame.ts';
import { explorePlain } from '../../../src/engine/explore/plain.ts';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { stateRules } from '../../../src/engine/rules/index.ts';
import { oneTwoPort, oneTwoPortRight } from '../../fixtures/one-two-port.ts';
import { twoTwoPorts, twoTwoPortsRight } from '../../fixtures/two-two-ports.ts';
import { mistakes, references, system } from '../support/flagship.ts';
import { plainSystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';

/** Keys (see `configKey`) of the lanes that are set. */
function keysOf({ system: of, blocks }: Frame, lanes: Int32Array): number[] {
  const keys: number[] = [];
  for (let inputs = 0; inputs < 1 << of.inputs.length; inputs++) {
    for (let place = 0; place < of.places; place++) {
      const word = must(lanes[place * blocks + (inputs >> 5)]);
      if ((word >>> (inputs & 31)) & 1) keys.push(inputs * of.places + place);
    }
  }
  return keys;
}
const sorted = (keys: Iterable<number>) => [...keys].sort((a, b) => a - b);

/** Fails unless both explorations meet, judge and call hunting the same states, and both judges fail the same ones. */
function compare(of: System) {
  const { frame, sweepStates } = makeJudge(of);
  return (wires: readonly Wire[]) => {
    const { reach, broken } = sweepStates(wires);
    const plain = explorePlain(of, wires);
    expect(keysOf(frame, reach.met)).toEqual(sorted(plain.met));
    expect(keysOf(frame, reach.judged)).toEqual(sorted(plain.judged));
    expect(keysOf(frame, reach.hunting)).toEqual(sorted(plain.hunting));
    const verdict = judgePlain(of, wires);
    expect(keysOf(frame, reach.judged)).toEqual(sorted(verdict.judged));
    stateRules.forEach(({ id }, r) => {
      expect([id, keysOf(frame, must(broken[r]))]).toEqual([id, sorted(must(verdict.broken.get(id)))]);
    });
  };
}

describe('the plain exploration and judge agree with the fast ones, rule by rule and state by state', {
  timeout: 60_000,
}, () => {
  test('on every right wiring and every classic mistake', () => {
    for (const { wires } of [...references, ...mistakes]) compare(system)(wires);
  });

  test('on 120 random and damaged wirings of the unvented three-port', () => {
    const right = references.map(({ wires }) => wires);
    fc.assert(fc.property(wirings(system, right), compare(system)), { seed, numRuns: 120 });
  });

  test('on 60 random and damaged wirings of a system without a three-port', () => {
    fc.assert(fc.property(wirings(twoTwoPorts, [twoTwoPortsRight]), compare(twoTwoPorts)), {
      seed,
      numRuns: 60,
    });
  });

  // Every other system of the course: second supplies, volt-free pairs, relays and overrun timers are among them.
  test.each(plainSystems(1 << 13))('on a right wiring and damaged ones of %s', (_, of) => {
    const right = of.references.map(({ wires }) => wires);
    compare(of.system)(must(right[0]));
    fc.assert(fc.property(wirings(of.system, right), compare(of.system)), { seed, numRuns: 6 });
  });

  test('on 100 random and damaged wirings of a system with fewer than 32 settings', () => {
    fc.assert(fc.property(wirings(oneTwoPort, [oneTwoPortRight]), compare(oneTwoPort)), {
      seed,
      numRuns: 100,
    });
  });
});
