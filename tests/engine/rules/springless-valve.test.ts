import { expect, test } from 'vitest';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { PartKind } from '../../../src/engine/model/part.ts';
import type { System } from '../../../src/engine/model/system.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { twoPortValve } from '../../../src/engine/parts/two-port-valve.ts';
import { judge, mistakes, references, right, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { follow } from '../support/replay.ts';

/** For this test alone: a valve that a motor opens and no spring shuts, so it stays where it stands without supply. */
const kind: PartKind = { ...twoPortValve, kind: 'springless-valve', title: 'Valve without a spring' };

/** The unvented three-port with such a valve where the two-port belongs. */
function withSpringless(): System {
  const parts = { ...system.spec.parts };
  parts['two-port'] = { ...must(parts['two-port']), kind: kind.kind };
  const built = buildSystem({ ...system.spec, parts }, (name, options) =>
    name === kind.kind ? kind : findKind(name, options),
  );
  const movers = built.movers.map((mover) => ({
    ...mover,
    unsprung: must(built.parts[mover.part]).kind === kind,
  }));
  // `unsprung: false` and no word of it are the same to the engine.
  return { ...built, movers };
}

// Approved Document G, England, 2015 edition with 2016 amendments, 3.31.
test('a valve that no spring shuts is rejected: it stays open when the supply is lost, however it is wired', () => {
  const springless = withSpringless();
  const verdict = makeJudge(springless).judge(right);
  expect(verdict.accepted).toBe(false);
  const finding = must(verdict.findings.find(({ id }) => id === 'shuts-without-supply'));
  expect(finding.severity).toBe('danger');
  expect(finding.inputs.supply).toBe('off');
  expect(finding.says).toContain('two-port valve is');
  expect(follow(springless, right, finding.steps).size).toBeGreaterThan(0);
  expect(must(judgePlain(springless, right).broken.get('shuts-without-supply')).size).toBeGreaterThan(0);
});

test('with its spring no wiring of the course breaks that rule', () => {
  for (const { wires } of [...references, ...mistakes])
    expect(judge.judge(wires).findings.map(({ id }) => id)).not.toContain('shuts-without-supply');
});
