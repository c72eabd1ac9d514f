import { expect, test } from 'vitest';
import { candidateOf } from '../../../src/engine/diagnose/candidate.ts';
import { replay } from '../../../src/engine/diagnose/replay.ts';
import { must } from '../support/must.ts';
import { site } from './callout.ts';

/* Every supply is tested for dead, each pole to each (HSE guidance note GS38 and common practice). */
test('Where two supplies feed a cylinder, a dead test with one still on shows its volts', () => {
  const { system, wires, bench } = site('twin-immersion');
  expect(system.supplies.length).toBe(2);
  const inputs = system.supplies.map(({ input }) => must(system.inputs[input]).id);
  const callout = { system, wires, fault: candidateOf(system, []), complaints: [], seed: 1 };
  const shown = (...on: string[]) =>
    replay(bench, { ...callout, found: Object.fromEntries(on.map((id) => [id, 'on'])) }, [
      { do: 'dead-test', pair: 'L-N' },
    ]).entries[0]?.outcome;
  expect(shown()).toBe(0);
  for (const input of inputs) expect(shown(input), `volts with only the ${input} on`).toBe(230);
});
