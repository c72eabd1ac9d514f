import { expect, test } from 'vitest';
import { wireKey } from '../../../src/engine/model/wiring.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { readWays } from '../../../src/ui/live/ways.ts';

const shelf = loadShelf();

test('On the upright strip every wire of every known wiring is shown, at each way that it is landed in', () => {
  for (const id of shelf.layoutIds) {
    const { system, right, wrong } = shelf.layout(id);
    for (const { wires } of [...right, ...wrong]) {
      const { ways, loose } = readWays(system, wires);
      const shown = new Map<string, number>();
      for (const { key } of [...ways.flatMap(({ asks, acts }) => [...asks, ...acts]), ...loose])
        shown.set(key, (shown.get(key) ?? 0) + 1);
      const joints = new Set(ways.map(({ node }) => system.nodes[node]));
      for (const wire of wires) {
        const ends = wire.filter((end) => joints.has(end)).length;
        expect(shown.get(wireKey(wire)), `${id}: ${wireKey(wire)}`).toBe(Math.max(1, ends));
      }
    }
  }
});

test('Leads of parts that ask come in on the left of the strip, of parts that act on the right', () => {
  const { system, right } = shelf.layout('three-port');
  const six = readWays(system, right[0]?.wires ?? []).ways.find(({ mark }) => mark === '6');
  expect(six?.asks.map(({ says }) => says)).toEqual(['Cyl stat CALL']);
  expect(six?.acts.map(({ says }) => says)).toEqual(['3-port orange', 'Pump L', 'Boiler SL']);
});
