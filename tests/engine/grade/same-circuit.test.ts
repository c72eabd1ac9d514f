import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Found, Verdict } from '../../../src/engine/grade/verdict.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { judge, mistakes, references } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { seed } from '../support/random.ts';

// Contract: the order of wires, of the two ends, and the numbering of the strip never change a verdict.

const all = [...references, ...mistakes].map(({ wires }) => wires);
const anyWiring = fc.constantFrom(...all);
const runs = { seed, numRuns: 150 };

/** What a verdict means, whatever the strip numbers: all but the words that name a strip terminal. */
const meaning = ({ accepted, states, findings }: Verdict) => ({
  accepted,
  states,
  findings: findings.map(({ id, severity, inputs, steps, failing }: Found) => ({
    id,
    severity,
    inputs,
    steps,
    failing,
  })),
});

describe('the same circuit gets the same verdict', { timeout: 60_000 }, () => {
  test('in whatever order the wires are listed', () => {
    const shuffled = anyWiring.chain((wires) =>
      fc.tuple(fc.constant(wires), fc.shuffledSubarray(wires, { minLength: wires.length })),
    );
    fc.assert(
      fc.property(shuffled, ([a, b]) => void expect(judge.judge(b)).toEqual(judge.judge(a))),
      runs,
    );
  });

  test('whichever end of a wire is named first', () => {
    const flipped = fc.tuple(anyWiring, fc.nat({ max: 2 ** 31 - 1 })).map(([wires, flips]) => {
      const turned = wires.map(([a, b], k): Wire => ((flips >> (k % 31)) & 1 ? [b, a] : [a, b]));
      return [wires, turned] as const;
    });
    fc.assert(
      fc.property(flipped, ([a, b]) => void expect(judge.judge(b)).toEqual(judge.judge(a))),
      runs,
    );
  });

  test('when wires are listed twice, either way round', () => {
    const twice = anyWiring.chain((wires) => fc.tuple(fc.constant(wires), fc.subarray(wires)));
    fc.assert(
      fc.property(twice, ([wires, again]) => {
        const turned = again.map(([a, b]): Wire => [b, a]);
        expect(judge.judge([...wires, ...again, ...turned])).toEqual(judge.judge(wires));
      }),
      runs,
    );
  });

  test('however the strip is numbered', () => {
    const ways = Array.from({ length: 12 }, (_, k) => `strip/${k + 1}`);
    const renumbered = fc.tuple(anyWiring, fc.shuffledSubarray(ways, { minLength: 12 }));
    fc.assert(
      fc.property(renumbered, ([wires, order]) => {
        const name = (end: string) => (end.startsWith('strip/') ? must(order[ways.indexOf(end)]) : end);
        const moved = wires.map(([a, b]): Wire => [name(a), name(b)]);
        expect(meaning(judge.judge(moved))).toEqual(meaning(judge.judge(wires)));
      }),
      runs,
    );
  });

  test('when a wire is laid through a spare terminal', () => {
    for (const wires of all) {
      const spare = ['strip/9', 'strip/2', 'strip/6'].find((way) => !wires.flat().includes(way));
      if (spare === undefined) continue;
      const [[a, b], ...rest] = [must(wires[0]), ...wires.slice(1)];
      const through: Wire[] = [[a, spare], [spare, b], ...rest];
      expect(meaning(judge.judge(through))).toEqual(meaning(judge.judge(wires)));
    }
  });

  test('when another wiring has been judged in between', () => {
    const first = all.map((wires) => judge.judge(wires));
    const second = all
      .toReversed()
      .map((wires) => judge.judge(wires))
      .toReversed();
    expect(second).toEqual(first);
  });
});
