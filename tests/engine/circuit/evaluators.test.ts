import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeSweepRoom, sweep } from '../../../src/engine/circuit/fast.ts';
import { makeFrame } from '../../../src/engine/circuit/frame.ts';
import { makeMoves, sweepMoves, worksIn } from '../../../src/engine/circuit/motion.ts';
import { mergeNets } from '../../../src/engine/circuit/nets.ts';
import { directions, evaluate } from '../../../src/engine/circuit/plain.ts';
import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { oneTwoPort, oneTwoPortRight } from '../../fixtures/one-two-port.ts';
import { twoTwoPorts, twoTwoPortsRight } from '../../fixtures/two-two-ports.ts';
import { references, system } from '../support/flagship.ts';
import { plainSystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';

/** Fails at the first state in which the two evaluators say different things of any node, load or valve. */
function compare(of: System, wires: readonly Wire[]): number {
  const frame = makeFrame(of);
  const nets = mergeNets(of, wires);
  const lanes = sweep(frame, nets, makeSweepRoom(frame));
  const moves = sweepMoves(frame, nets, lanes, makeMoves(frame));
  const bit = (words: Int32Array, at: number, inputs: number) =>
    ((must(words[at]) >>> (inputs & 31)) & 1) === 1;
  let states = 0;
  for (let place = 0; place < of.places; place++) {
    for (let inputs = 0; inputs < 1 << of.inputs.length; inputs++) {
      const live = evaluate(of, wires, { inputs, place });
      const w = place * frame.blocks + (inputs >> 5);
      let same = true;
      const agree = (plain: unknown, fast: unknown) => {
        same &&= plain === fast;
      };
      of.nodes.forEach((_, node) => {
        const row = must(nets.of[node]) * frame.words + w;
        agree(live.line[node], bit(lanes.line, row, inputs));
        agree(live.neutral[node], bit(lanes.neutral, row, inputs));
        agree(live.earth[node], bit(lanes.earth, row, inputs));
      });
      of.loads.forEach((load, l) => {
        agree(live.works[l], ((worksIn(load, frame, nets, lanes, w) >>> (inputs & 31)) & 1) === 1);
      });
      const steps = directions(of, live, place);
      of.movers.forEach((_, m) => {
        const row = m * frame.words + w;
        agree(steps[m], bit(moves.on, row, inputs) ? 1 : bit(moves.back, row, inputs) ? -1 : 0);
      });
      agree(
        steps.every((step) => step === 0),
        bit(moves.rest, w, inputs),
      );
      if (!same) throw new Error(`they differ at inputs ${inputs}, place ${place}: ${JSON.stringify(wires)}`);
      states++;
    }
  }
  return states;
}

describe('one state at a time and 32 to a word say the same', { timeout: 60_000 }, () => {
  test('on every right wiring of the unvented three-port, in all 64 × 9 configurations', () => {
    for (const { wires } of references) expect(compare(system, wires)).toBe(576);
  });

  test('on 200 random and damaged wirings of the unvented three-port', () => {
    const right = references.map(({ wires }) => wires);
    fc.assert(
      fc.property(wirings(system, right), (wires) => compare(system, wires) === 576),
      { seed, numRuns: 200 },
    );
  });

  test('on 50 random and damaged wirings of a system without a three-port', () => {
    fc.assert(
      fc.property(wirings(twoTwoPorts, [twoTwoPortsRight]), (wires) => compare(twoTwoPorts, wires) === 576),
      { seed, numRuns: 50 },
    );
  });

  test.each(plainSystems(1 << 13))('on a right wiring and damaged ones of %s', (_, of) => {
    const right = of.references.map(({ wires }) => wires);
    const all = of.system.places * 2 ** of.system.inputs.length;
    fc.assert(
      fc.property(
        fc.oneof(fc.constant(must(right[0])), wirings(of.system, right)),
        (wires) => compare(of.system, wires) === all,
      ),
      { seed, numRuns: 8 },
    );
  });

  test('on 200 random and damaged wirings of a system with fewer than 32 settings', () => {
    fc.assert(
      fc.property(wirings(oneTwoPort, [oneTwoPortRight]), (wires) => compare(oneTwoPort, wires) === 8 * 3),
      { seed, numRuns: 200 },
    );
  });
});
