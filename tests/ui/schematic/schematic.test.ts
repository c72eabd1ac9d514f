import { describe, expect, test } from 'vitest';
import { boxOf } from '../../../src/ui/schematic/measure.ts';
import { drawSchematic } from '../../../src/ui/schematic/schematic.ts';
import { type Case, systems } from './cases.ts';
import { missing, mixed, severed } from './circuit.ts';
import { alongside, clashes, crossingsOf, hits, lettersOf } from './geometry.ts';

/** What is wrong, by wiring. */
const wrong = (cases: readonly Case[], look: (one: Case) => string[]): string[] =>
  cases.flatMap((one) => look(one).map((says) => `${one.name}: ${says}`));

describe.each(systems)('Schematics of $id, wired right, wrong and not at all', ({ all, right }) => {
  test('Every contact and every load stands in each once', () => {
    for (const { name, system, drawing } of all)
      for (const what of ['contact', 'load'] as const) {
        const shown = drawing.symbols.filter((symbol) => symbol.what === what).map(({ index }) => index);
        const there = what === 'contact' ? system.contacts : system.loads;
        expect(
          shown.sort((p, q) => p - q),
          name,
        ).toEqual([...there.keys()]);
      }
  });

  test('What the wires join is joined once, by name, and nothing else is', () => {
    expect(wrong(all, missing)).toEqual([]);
    expect(wrong(all, mixed)).toEqual([]);
  });

  test('Conductors hang together and come to each of their contacts and loads', () => {
    expect(wrong(all, severed)).toEqual([]);
  });

  test('No two words stand in one place', () => {
    expect(wrong(all, ({ drawing }) => clashes(drawing))).toEqual([]);
  });

  test('No wire runs through a word or a symbol, nor along another wire', () => {
    expect(wrong(all, ({ drawing }) => hits(drawing))).toEqual([]);
    expect(wrong(all, ({ drawing }) => alongside(drawing))).toEqual([]);
  });

  test('Wherever two wires cross, one of them has a gap', () => {
    for (const { name, drawing } of all) {
      const crossings = crossingsOf(drawing);
      expect(crossings, name).toHaveLength(drawing.crossings);
      expect(crossings.filter(({ level, x }) => !level.gaps.includes(x))).toEqual([]);
    }
  });

  test('Wired right, wires cross at most twice', () => {
    for (const { name, drawing } of right) expect(crossingsOf(drawing).length, name).toBeLessThanOrEqual(2);
  });

  test('Nothing sticks out of the frame', () => {
    const out = ({ drawing: { width, height, ...rest } }: Case) =>
      lettersOf({ width, height, ...rest })
        .filter(({ box }) => box.left < -1 || box.top < 0 || box.right > width + 1 || box.bottom > height)
        .map(({ says }) => says);
    expect(wrong(all, out)).toEqual([]);
  });

  test('Line comes from the left of every contact and load, and neutral goes home on the right', () => {
    for (const { name, system, drawing } of right) {
      const at = (node: number) => drawing.nets.find(({ nodes }) => nodes.includes(node))?.runs[0]?.from[0];
      const fed = drawing.symbols.filter(({ from }) => drawing.graph.fed.has(from));
      expect(fed.length).toBeGreaterThan(0);
      for (const { line, out } of system.supplies)
        for (const { x, what, to } of fed) {
          expect(at(line), name).toBeLessThan(x);
          if (what === 'load' && drawing.graph.neutrals.has(to))
            expect(at(out.neutral), name).toBeGreaterThan(x);
        }
    }
  });

  test('The same circuit gives the same drawing, however its wires are written down', () => {
    for (const { name, system, wires, drawing } of right) {
      const turned = [...wires].reverse().map(([a, b]) => [b, a] as const);
      const again = drawSchematic(system, turned);
      expect([again.nets, again.symbols, again.notes], name).toEqual([
        drawing.nets,
        drawing.symbols,
        drawing.notes,
      ]);
    }
  });

  test('On a sheet of A4 the markings can be read', () => {
    // Capitals 1.3 mm high are letters of about 5 points: the smallest print in common use (common practice).
    for (const { name, drawing } of right) {
      const { width, height } = drawing;
      const fits = (w: number, h: number) => Math.min(w / width, h / height);
      const scale = Math.max(fits(273, 165), fits(186, 250));
      const capitals = drawing.symbols.flatMap(({ ends }) =>
        ends.map(({ label }) => scale * (label.y - boxOf(label).top)),
      );
      expect(Math.min(...capitals), name).toBeGreaterThanOrEqual(1.3);
    }
  });
});
