import { describe, expect, test } from 'vitest';
import { wireKey } from '../../../src/engine/model/wiring.ts';
import { systemPages } from '../../../src/files/site/systems.ts';
import { LABELS, stripSheets } from '../../../src/ui/paper/strip-sheet.ts';

const systems = systemPages().map((page) => ({ id: page.spec.id, ...page }));
/** Height of the drawing on A4 upright inside its margins and under its heading, in quarters of a millimetre. */
const MOST = 4 * 232;

describe.each(systems)('The strip of $id on paper', ({ system, references }) => {
  const leads = system.parts
    .filter(({ kind }) => kind.kind !== 'strip')
    .flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}/${terminal.id}`));
  const blank = stripSheets(system, [], true);

  test('shows every terminal of every part once, and every way of the strip on every sheet', () => {
    const shown = blank.flatMap(({ parts }) => parts.flatMap(({ pins }) => pins.map(({ id }) => id)));
    expect(shown.toSorted()).toEqual(leads.toSorted());
    const strip = system.parts.find(({ kind }) => kind.kind === 'strip');
    for (const { ways } of blank)
      expect(ways.map(({ mark }) => mark)).toEqual(strip?.kind.terminals.map(({ id }) => id));
  });

  test('fits on its sheets with room between the terminals', () => {
    for (const { height, parts, ways } of [
      ...blank,
      ...references.flatMap(({ wires }) => stripSheets(system, wires)),
    ]) {
      expect(height).toBeLessThanOrEqual(MOST);
      for (const side of ['left', 'right']) {
        const at = parts.filter((part) => part.side === side).flatMap(({ pins }) => pins.map(({ y }) => y));
        for (const [k, y] of at.entries()) if (k > 0) expect(y - (at[k - 1] ?? 0)).toBeGreaterThanOrEqual(22);
      }
      for (const { y, height: way } of ways) {
        expect(way).toBeGreaterThanOrEqual(20);
        expect(y - way / 2).toBeGreaterThanOrEqual(0);
        expect(y + way / 2).toBeLessThanOrEqual(height);
      }
    }
  });

  test('draws every wire of a right wiring, or names its ends where they stand on two sheets', () => {
    for (const { wires } of references) {
      const sheets = stripSheets(system, wires);
      const drawn = new Set(sheets.flatMap((sheet) => sheet.wires.map(({ key }) => key)));
      const lands = new Map(
        sheets.flatMap(({ parts }) =>
          parts.flatMap(({ pins }) => pins.map((pin) => [pin.id, pin.lands] as const)),
        ),
      );
      for (const wire of wires) {
        if (!drawn.has(wireKey(wire))) expect(sheets.length).toBeGreaterThan(1);
        for (const end of wire) if (lands.has(end)) expect(lands.get(end), end).not.toBe('');
      }
    }
  });

  test('leads no wire through a label, and each from its own terminal', () => {
    for (const { wires } of references)
      for (const sheet of stripSheets(system, wires)) {
        const between = sheet.rightX - LABELS;
        for (const { key, path } of sheet.wires) {
          const points = [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [
            Number(x),
            Number(y),
          ]);
          expect(points.length, key).toBeGreaterThan(1);
          for (const [x = -1, y = -1] of points) {
            expect(y, key).toBeGreaterThanOrEqual(0);
            expect(y, key).toBeLessThanOrEqual(between);
            expect(x, key).toBeGreaterThanOrEqual(0);
            expect(x, key).toBeLessThanOrEqual(sheet.height);
          }
          for (const part of sheet.parts)
            for (const pin of part.pins)
              if (key.split(' ').includes(pin.id)) {
                const edge = part.side === 'left' ? 0 : between;
                expect(
                  points.some(([x = -1, y = -1]) => Math.abs(x - pin.y) < 1 && Math.abs(y - edge) < 1),
                  key,
                ).toBe(true);
              }
        }
      }
  });
});
