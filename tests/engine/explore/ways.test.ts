import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findWays } from '../../../src/engine/explore/ways.ts';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { bitsOf, type System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { stateRules } from '../../../src/engine/rules/index.ts';
import { viewState } from '../../../src/engine/rules/view.ts';
import { twoTwoPorts, twoTwoPortsRight } from '../../fixtures/two-two-ports.ts';
import { mistakes, references, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { fewestMoves, follow, movesIn, walkProblems } from '../support/replay.ts';

/** How many bits are set. */
const ones = (bits: number): number => [...bits.toString(2)].filter((digit) => digit === '1').length;

/** Fails unless every finding about states is led to by its steps, breaks its rule there, and no way is shorter. */
function check(of: System) {
  const { judge } = makeJudge(of);
  return (wires: readonly Wire[]): number => {
    const plain = judgePlain(of, wires);
    const moves = fewestMoves(of, wires);
    const found = judge(wires).findings.filter(({ id }) => stateRules.some((rule) => rule.id === id));
    for (const finding of found) {
      const { id, config, inputs, steps } = finding;
      expect([id, walkProblems(of, wires, finding)]).toEqual([id, []]);
      expect(bitsOf(of, inputs)).toBe(config.inputs);
      expect(follow(of, wires, steps)).toContain(config.place);
      const rule = must(stateRules.find((one) => one.id === id));
      expect(rule.broken(viewState(of, wires, config))).toBe(true);
      const failing = must(plain.broken.get(id));
      expect(finding.failing).toBe(failing.size);
      const fewest = Math.min(...[...failing].map((key) => must(moves.get(key))));
      expect([id, movesIn(steps)]).toEqual([id, fewest]);
    }
    return found.length;
  };
}

describe('the way to a failing state', { timeout: 60_000 }, () => {
  test.each(mistakes)(
    '$id: the steps replay from cold to the failing state, and none are fewer',
    ({ wires }) => {
      check(system)(wires);
    },
  );

  test('the same holds on 60 random and damaged wirings', () => {
    const right = references.map(({ wires }) => wires);
    fc.assert(
      fc.property(wirings(system, right), (wires) => void check(system)(wires)),
      { seed, numRuns: 60 },
    );
  });

  test('the same holds on 40 wirings of a system without a three-port', () => {
    fc.assert(
      fc.property(wirings(twoTwoPorts, [twoTwoPortsRight]), (wires) => void check(twoTwoPorts)(wires)),
      { seed, numRuns: 40 },
    );
  });

  test('it is the shortest not only to findings but to every state that can be met', () => {
    const { frame, sweepStates } = makeJudge(system);
    for (const { wires } of [...references, ...mistakes.slice(0, 12)]) {
      const { moves } = sweepStates(wires);
      for (const [key, fewest] of fewestMoves(system, wires)) {
        const lanes = new Int32Array(frame.words);
        const inputs = Math.floor(key / system.places);
        lanes[(key % system.places) * frame.blocks + (inputs >> 5)] = 1 << (inputs & 31);
        const { steps } = must(findWays(frame, moves, [lanes])[0]);
        const flips = steps.slice(1).map((step, k) => ones(step.inputs ^ must(steps[k]).inputs));
        expect(flips.reduce((sum, flipped) => sum + flipped, 0)).toBe(fewest);
      }
    }
  });

  test('a latch that needs a history is told with that history: both on, then hot water no longer wanted', () => {
    const latch = must(mistakes.find(({ id }) => id === 'end-switch-fed-from-call'));
    const [finding] = makeJudge(system).judge(latch.wires).findings;
    expect(movesIn(must(finding).steps)).toBe(6);
    expect(must(finding).steps[0]).toEqual({ supply: 'on' });
  });
});
