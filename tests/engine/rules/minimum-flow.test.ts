import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { makeWideJudge } from '../../../src/engine/grade/wide-judge.ts';
import { buildSystem } from '../../../src/engine/model/build.ts';
import { partNamed, positionOf, type System } from '../../../src/engine/model/system.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { openWays } from '../../../src/engine/plant/paths.ts';
import { librarySystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { follow } from '../support/replay.ts';

const RULE = 'minimum-flow';
const course = (id: string) => must(librarySystems.find((system) => system.id === id));
const withBypass = course('overrun-two-two-ports');
const right = withBypass.references.map(({ wires }) => wires);

/** The same house with the bypass left out: a mistake of the pipes, which no wiring of the course can make. */
const withoutBypass: System = buildSystem(
  {
    ...withBypass.spec,
    parts: Object.fromEntries(Object.entries(withBypass.spec.parts).filter(([id]) => id !== 'bypass')),
    pipes: withBypass.spec.pipes.filter((ends) => !ends.some((end) => end.startsWith('bypass/'))),
  },
  findKind,
);

const findingOf = (system: System, wires: (typeof right)[number]) =>
  makeJudge(system)
    .judge(wires)
    .findings.find(({ id }) => id === RULE);

// Approved Document L, Volume 1, 2021 edition, 5.18.
describe('water can move whenever the pump runs, overrun included', () => {
  test('two two-ports with pump overrun are rejected without a bypass, however well they are wired', () => {
    for (const wires of right) {
      const finding = must(findingOf(withoutBypass, wires));
      expect(finding.says).toContain('the pump runs but no way is open');
      expect(follow(withoutBypass, wires, finding.steps)).toContain(finding.config.place);
      const stands = (id: string) =>
        positionOf(withoutBypass, partNamed(withoutBypass, id), finding.config.place);
      expect(['water-valve', 'heating-valve', 'boiler'].map(stands)).toEqual(['shut', 'shut', 'running']);
    }
  });

  test('no other rule finds anything wrong there: the failing moment is over before the valves rest', () => {
    for (const wires of right)
      expect(
        makeJudge(withoutBypass)
          .judge(wires)
          .findings.map(({ id }) => id),
      ).toEqual([RULE]);
  });

  test('a bypass between flow and return puts it right', () => {
    for (const wires of right) expect(findingOf(withBypass.system, wires)).toBeUndefined();
  });

  test('a three-port needs none: some way through it is always open', () => {
    const { system, references } = course('overrun-three-port');
    for (const { wires } of references) expect(findingOf(system, wires)).toBeUndefined();
  });

  test('with both valves shut the bypass is the one way left, and it brings no heat to cylinder or radiators', () => {
    expect([...must(openWays(withBypass.system, 0).get('boiler'))]).toEqual(['bypass']);
    expect([...must(openWays(withoutBypass, 0).get('boiler'))]).toEqual([]);
  });

  test('every way of judging finds the same states, in right, damaged and random wirings', () => {
    const every = makeJudge(withoutBypass);
    const wide = makeWideJudge(withoutBypass);
    let broke = 0;
    fc.assert(
      fc.property(wirings(withoutBypass, right), (wires) => {
        const { size } = must(judgePlain(withoutBypass, wires).broken.get(RULE));
        if (size > 0) broke++;
        for (const judge of [every, wide]) {
          const finding = judge.judge(wires).findings.find(({ id }) => id === RULE);
          expect(finding?.failing ?? 0, 'states that break it; expected, by the plain judge').toBe(size);
        }
      }),
      { seed, numRuns: 30 },
    );
    expect(broke).toBeGreaterThan(3);
  });
});
