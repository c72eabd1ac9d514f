import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { partNamed, positionOf } from '../../../src/engine/model/system.ts';
import { applyMistake } from '../../../src/files/mistake.ts';
import { librarySystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { follow } from '../support/replay.ts';

const RULE = 'overrun-carried';

// The pump of a boiler with overrun is fed by the boiler, not by the call: common practice.
describe.each(['overrun-three-port', 'overrun-two-two-ports'])('on %s', (id) => {
  const { system, references, mistakes } = must(librarySystems.find((one) => one.id === id));
  const judge = makeJudge(system);

  test('a pump left on the call is found out, in a moment when the boiler still asks for it', () => {
    const left = must(mistakes.find((one) => one.id === 'pump-left-on-the-call'));
    const wires = applyMistake(references, left);
    const [finding, ...others] = judge.judge(wires).findings;
    expect(others).toEqual([]);
    expect(must(finding).id).toBe(RULE);
    expect(must(finding).says).toContain('the boiler still asks for the pump, and the pump stands still.');
    const { config, steps } = must(finding);
    expect(positionOf(system, partNamed(system, 'boiler'), config.place)).toBe('running');
    expect(follow(system, wires, steps)).toContain(config.place);
  });

  test('one state at a time or all at once, the same states break it', { timeout: 60_000 }, () => {
    const right = references.map(({ wires }) => wires);
    fc.assert(
      fc.property(wirings(system, right), (wires) => {
        const plain = must(judgePlain(system, wires).broken.get(RULE)).size;
        const found = judge.judge(wires).findings.find((one) => one.id === RULE);
        expect(
          found?.failing ?? 0,
          'states that break it, by the fast judge; expected, by the plain one',
        ).toBe(plain);
      }),
      { seed, numRuns: 40 },
    );
  });
});
