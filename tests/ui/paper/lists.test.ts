import { describe, expect, test } from 'vitest';
import { distinctWires, wireKey } from '../../../src/engine/model/wiring.ts';
import { jobPages } from '../../../src/files/site/jobs.ts';
import { systemPages } from '../../../src/files/site/systems.ts';
import { leadList, linkList, rightWith, wiringList } from '../../../src/ui/paper/lists.ts';
import { nameOf } from '../../../src/ui/wiring/names.ts';

const systems = systemPages();

describe.each(systems.map((page) => ({ id: page.spec.id, ...page })))(
  'The lists of $id',
  ({ system, references }) => {
    test('name every wire once, each with the letters of a core', () => {
      for (const { wires } of references) {
        const rows = wiringList(system, wires);
        expect(rows.map(({ number }) => number)).toEqual(rows.map((_, k) => k + 1));
        const said = rows.map(({ from, to }) => [from, to].toSorted().join(' | '));
        const meant = distinctWires(wires).map((wire) =>
          wire
            .map((end) => nameOf(system, end))
            .toSorted()
            .join(' | '),
        );
        expect(said.toSorted()).toEqual(meant.toSorted());
        // IEC 60757: letters of colours.
        for (const { core } of rows) expect(core).toMatch(/^(BN|BU|GNYE|BK|GY|WH|OG)$/);
      }
    });

    test('give each lead of each part with what is landed on it', () => {
      for (const { wires } of references) {
        const ends = leadList(system, wires).flatMap(({ leads }) => leads.flatMap(({ given }) => given));
        const links = linkList(system, wires).length;
        const partToPart = wires.filter((wire) => wire.every((end) => !end.startsWith('strip/'))).length;
        expect(ends.length).toBe(wires.length - links + partToPart);
      }
    });
  },
);

test('Every job with fixed wires has a right wiring that keeps them, and no other is shown', () => {
  const fixed = jobPages().filter(({ job }) => job.gives?.locked);
  expect(fixed.length).toBeGreaterThan(10);
  for (const { job, given, references } of fixed) {
    const right = rightWith(references, given);
    expect(right.length, job.id).toBeGreaterThan(0);
    for (const { wires } of right) {
      const keys = new Set(wires.map(wireKey));
      expect(
        given.filter((wire) => !keys.has(wireKey(wire))),
        job.id,
      ).toEqual([]);
    }
  }
});
