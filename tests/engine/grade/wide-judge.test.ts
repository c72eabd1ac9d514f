import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import type { Verdict } from '../../../src/engine/grade/verdict.ts';
import { makeWideJudge } from '../../../src/engine/grade/wide-judge.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { applyMistake } from '../../../src/files/mistake.ts';
import { plainSystems } from '../support/library.ts';
import { seed, wirings } from '../support/random.ts';

/** What must be the same: which of two equally near states is shown may differ, and with it the sentence. */
const gist = ({ accepted, states, findings }: Verdict) => ({
  accepted,
  states,
  findings: findings.map(({ id, failing, steps }) => ({
    id,
    failing,
    moves: steps.reduce((sum, step) => sum + Object.keys(step).length, 0),
  })),
});

const ids = (rules: readonly { readonly id: string }[]) => rules.map(({ id }) => id);

describe('both judges list the rules broken as their verdicts have them', { timeout: 60_000 }, () => {
  test.each(plainSystems(1 << 13))('of right, mistaken, damaged and random wirings of %s', (_, of) => {
    const right = of.references.map(({ wires }) => wires);
    const judges = [makeWideJudge(of.system), makeJudge(of.system)];
    const seeRules = (wires: readonly Wire[]) => {
      for (const { judge, rulesBroken } of judges)
        expect(ids(rulesBroken(wires))).toEqual(ids(judge(wires).findings));
    };
    for (const mistake of of.mistakes) seeRules(applyMistake(of.references, mistake));
    for (const wires of right) seeRules(wires);
    fc.assert(fc.property(wirings(of.system, right), seeRules), { seed, numRuns: 40 });
  });
});

describe('the judge that keeps sets of states as diagrams says what the judge of every state says', {
  timeout: 60_000,
}, () => {
  test.each(plainSystems(1 << 16))('of every right wiring and every mistake of %s', (_, of) => {
    const wide = makeWideJudge(of.system);
    const every = makeJudge(of.system);
    const wrong = of.mistakes.map((mistake) => applyMistake(of.references, mistake));
    for (const wires of [...of.references.map((reference) => reference.wires), ...wrong])
      expect(gist(wide.judge(wires))).toEqual(gist(every.judge(wires)));
  });

  test.each(plainSystems(1 << 13))('of damaged and random wirings of %s', (_, of) => {
    const wide = makeWideJudge(of.system);
    const every = makeJudge(of.system);
    const right = of.references.map(({ wires }) => wires);
    fc.assert(
      fc.property(wirings(of.system, right), (wires) => {
        expect(gist(wide.judge(wires))).toEqual(gist(every.judge(wires)));
      }),
      { seed, numRuns: 40 },
    );
  });
});
