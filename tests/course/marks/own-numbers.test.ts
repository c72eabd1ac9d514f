import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../src/course/layout.ts';
import { sameCircuitKey, slipKey, slipsOf } from '../../../src/course/marks/own-numbers.ts';
import { sure } from '../../../src/course/marks/sure.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { layoutOf, layouts, renumbered } from './support.ts';

const three = layoutOf('unvented-three-port');
const right = sure(three.right[0]).wires;
const rights = (layout: Layout) => layout.right.map(({ wires }) => wires);
const without = (wire: Wire): Wire[] => right.filter((one) => one !== wire);

describe('the slips of a wrong wiring', () => {
  test('a right wiring has none, whatever its numbers', () => {
    for (const layout of layouts)
      for (const [k, wires] of rights(layout).entries())
        expect(slipsOf(layout.system, renumbered(layout, wires, k + 1), rights(layout)).slips).toEqual([]);
  });

  test('a lead in the wrong place is told as one slip, in the numbers of the layout’s own wiring', () => {
    const lead = right.find(([a, b]) => [a, b].some((end) => end.startsWith('two-port/grey')));
    const way = lead?.find((end) => end.startsWith('strip/'));
    if (!lead || !way) throw new Error('the wiring has no such lead');
    const other = sure(right.flat().find((end) => end.startsWith('strip/') && end !== way));
    const wrong: Wire[] = [...without(lead), ['two-port/grey', other]];
    const { slips } = slipsOf(three.system, renumbered(three, wrong, 5), [right]);
    expect(slips).toHaveLength(1);
    expect([...sure(sure(slips[0]).there)].sort()).toEqual(['two-port/grey', other].sort());
    expect([...sure(sure(slips[0]).missing)].sort()).toEqual(['two-port/grey', way].sort());
  });

  test('a missing wire is told as missing, one too many as there', () => {
    const [gone] = right;
    const less = slipsOf(three.system, without(sure(gone)), [right]).slips;
    expect(less).toHaveLength(1);
    expect(sure(less[0]).there).toBeUndefined();
    const [one, other] = [...new Set(right.flat().filter((end) => end.startsWith('strip/')))];
    const more = slipsOf(three.system, renumbered(three, [...right, [sure(one), sure(other)]], 3), [
      right,
    ]).slips;
    expect(more).toHaveLength(1);
    expect(sure(more[0]).missing).toBeUndefined();
    expect([...sure(sure(more[0]).there)].sort()).toEqual([one, other].sort());
  });

  test('a lead that is landed where nothing else is belongs elsewhere', () => {
    const lead = sure(right.find((wire) => wire.includes('boiler/SL')));
    const free = sure(
      three.system.nodes.find((name) => name.startsWith('strip/') && !right.flat().includes(name)),
    );
    const end = sure(lead.find((one) => !one.startsWith('strip/')));
    const { slips } = slipsOf(three.system, [...without(lead), [end, free]], [right]);
    expect(slips.map(({ missing }) => missing && [...missing].sort())).toEqual([[...lead].sort()]);
  });

  test('of classic mistakes of every layout they are the same under every numbering of the strip', () => {
    for (const layout of layouts)
      for (const { id, wires } of layout.wrong.slice(0, 6)) {
        const [own, other] = [wires, renumbered(layout, wires, 99)].map((one) =>
          slipsOf(layout.system, one, rights(layout)).slips.map(slipKey).sort(),
        );
        // A wiring may also be wrong only in how many wires stand in a terminal: then no wire is in a wrong place.
        const crowded = sure(layout.wrong.find((one) => one.id === id)).breaks.join() === 'crowded-terminal';
        if (!crowded) expect(sure(own).length, `${layout.id} ${id}`).toBeGreaterThan(0);
        expect(other, `${layout.id} ${id}`).toEqual(own);
      }
  });
});

test('the name of a circuit stays the same under every numbering, and changes with any wire', () => {
  fc.assert(
    fc.property(fc.nat(layouts.length - 1), fc.nat(), fc.nat(), (which, seed, lost) => {
      const layout = sure(layouts[which]);
      const wires = sure(rights(layout)[0]);
      const key = sameCircuitKey(layout.system, wires);
      expect(sameCircuitKey(layout.system, renumbered(layout, wires, seed))).toBe(key);
      const fewer = wires.filter((_, k) => k !== lost % wires.length);
      expect(sameCircuitKey(layout.system, fewer)).not.toBe(key);
    }),
    { numRuns: 60 },
  );
});
