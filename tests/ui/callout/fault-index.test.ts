import { expect, test } from 'vitest';
import { allCandidates } from '../../../src/engine/diagnose/callout.ts';
import { wireKey } from '../../../src/engine/model/wiring.ts';
import { siteShelf } from '../../../src/files/site/shelf.ts';
import { indexFaults } from '../../../src/ui/callout/fault-index.ts';

const shelf = siteShelf();

test('Everything that may be wrong with any system can be looked up, each in one place', () => {
  for (const id of shelf.layoutIds) {
    const { system, right } = shelf.layout(id);
    const candidates = allCandidates(system, right[0]?.wires ?? []);
    const { parts, wires, links, several, nothing } = indexFaults(system, candidates);
    const found = [
      ...(nothing ? [nothing] : []),
      ...[...parts.values()].flat(),
      ...[...wires.values()].flatMap(({ broken, landings }) => [
        ...(broken ? [broken] : []),
        ...landings.map(({ candidate }) => candidate),
      ]),
      ...links.map(({ candidate }) => candidate),
      ...several,
    ];
    expect(found.map((one) => one.id).sort(), id).toEqual(candidates.map((one) => one.id).sort());
  }
});

test('A wire landed wrong is found by its wire, the end that was moved and where that end is now, and by nothing else', () => {
  const { system, right } = shelf.layout('six-zones');
  const { wires } = indexFaults(system, allCandidates(system, right[0]?.wires ?? []));
  for (const { wire, landings } of wires.values()) {
    const ways = landings.map(({ end, to }) => `${end} ${to}`);
    expect(new Set(ways).size, wireKey(wire)).toBe(ways.length);
    for (const { end, to, candidate } of landings) {
      const kept = wire.find((one) => one !== end);
      expect(candidate.misplaced[0]?.landed).toContain(kept);
      expect(candidate.misplaced[0]?.landed).toContain(to);
    }
  }
});
