import { describe, expect, test } from 'vitest';
import { distinctWires } from '../../../src/engine/model/wiring.ts';
import { BOX, drawStrip } from '../../../src/ui/drawings/strip.ts';
import { textWidth } from '../../../src/ui/schematic/measure.ts';
import { librarySystems } from '../../engine/support/library.ts';

describe.each(librarySystems)('The strip of $id', ({ system, references }) => {
  const drawings = references.map(({ id, wires }) => ({ id, wires, drawing: drawStrip(system, wires) }));

  test('Every wire, every lead and every strip terminal is drawn once', () => {
    for (const { id, wires, drawing } of drawings) {
      expect(drawing.wires, id).toHaveLength(distinctWires(wires).length);
      expect(drawing.wires.filter(({ path }) => path === '')).toEqual([]);
      const nodes = [...drawing.ways, ...drawing.boxes.flatMap(({ pins }) => pins)].map(({ node }) => node);
      expect(nodes.sort((p, q) => p - q)).toEqual(Array.from({ length: system.terminals }, (_, k) => k));
    }
  });

  test('Markings of neighbouring leads do not touch, and boxes stay inside the frame', () => {
    for (const { id, drawing } of drawings)
      for (const { pins, x, y, width } of drawing.boxes) {
        expect(x, id).toBeGreaterThanOrEqual(0);
        expect(x + width, id).toBeLessThanOrEqual(drawing.width);
        expect(y + BOX, id).toBeLessThanOrEqual(drawing.height);
        for (const [k, pin] of pins.entries()) {
          const next = pins[k + 1];
          if (!next) continue;
          const half = (mark: readonly string[]) =>
            Math.max(...mark.map((line) => textWidth(line, 'mark'))) / 2;
          expect(next.x - pin.x, `${id}: ${pin.mark.join('')}`).toBeGreaterThan(
            half(pin.mark) + half(next.mark) - 1,
          );
        }
      }
  });
});
