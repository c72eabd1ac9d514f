import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { atWork, evaluate } from '../../../src/engine/circuit/plain.ts';
import { configKey } from '../../../src/engine/explore/plain.ts';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { stateTable } from '../../../src/engine/grade/table.ts';
import { buildSystem } from '../../../src/engine/model/build.ts';
import { bitsOf, positionOf } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { openPaths } from '../../../src/engine/plant/paths.ts';
import { expandLanding } from '../../../src/files/names.ts';

const {
  references,
  mistakes: _,
  ...spec
} = parse(
  readFileSync(new URL('../../../content/systems/unvented-three-port.yaml', import.meta.url), 'utf8'),
);
const system = buildSystem(spec, findKind);
const judge = makeJudge(system);

/** Right wirings with up to seven wires lifted or landed elsewhere, from a fixed seed. */
function randomWirings(count: number): Wire[][] {
  let seed = 42;
  const below = (n: number) => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return Math.floor((seed / 2 ** 32) * n);
  };
  return Array.from({ length: count }, () => {
    const wires = expandLanding(references[below(references.length)].wires);
    for (let changes = below(8); changes > 0; changes--) {
      const k = below(wires.length);
      const [end, other] = wires[k] ?? ['', ''];
      const to = system.nodes[below(system.terminals)] ?? '';
      if (below(3) === 0) wires.splice(k, 1);
      else wires[k] = [end, to === end ? other : to];
    }
    return wires;
  });
}

test('the table of states says of 30 random wirings what the plain judge says, state by state', () => {
  let failing = 0;
  for (const wires of randomWirings(30)) {
    const plain = judgePlain(system, wires);
    const rows = stateTable(system, wires, judge);
    expect(rows.map(({ config }) => configKey(system, config))).toEqual(
      [...plain.judged].sort((a, b) => a - b),
    );
    for (const { config, settings, positions, fires, pumps, heats, broken } of rows) {
      const key = configKey(system, config);
      const live = evaluate(system, wires, config);
      expect(broken).toEqual([...plain.broken].flatMap(([id, states]) => (states.has(key) ? [id] : [])));
      expect({ fires, pumps }).toEqual({
        fires: atWork(system, live, 'fires'),
        pumps: atWork(system, live, 'pumps'),
      });
      expect(heats).toEqual(fires ? [...openPaths(system, config.place)] : []);
      expect(bitsOf(system, settings)).toBe(config.inputs);
      for (const [id, position] of Object.entries(positions)) {
        const part = system.parts.find((p) => p.id === id);
        expect(part && positionOf(system, part, config.place)).toBe(position);
      }
      if (broken.length > 0) failing++;
    }
  }
  expect(failing).toBeGreaterThan(100);
});

test('the table needs no judge of its caller', () => {
  const [wires] = randomWirings(1);
  expect(stateTable(system, wires ?? [])).toEqual(stateTable(system, wires ?? [], judge));
});
