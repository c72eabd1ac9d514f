import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { route, type Wire } from '../../../../src/ui/board/lanes/route.ts';
import { board as narrow } from './board.ts';
import { faults } from './judge.ts';

/** Margins wide enough for six wires each side to pass the strip 5 px apart. */
const board = { ...narrow, left: -30, right: 810 };
const uppers = board.upper.map(({ id }) => id);
const lowers = board.lower.map(({ id }) => id);
const terminals = board.strip.map(({ id }) => id);

/** What fits at full clearance (see `route`): six wires to a lead, eight to a terminal, twelve round the strip. */
function fitting(pairs: [string, string][]): Wire[] {
  const used = new Map<string, number>();
  const most = (id: string): number => (id === 'round' ? 12 : terminals.includes(id) ? 8 : 6);
  const kept: Wire[] = [];
  for (const [a, b] of pairs) {
    const round = [a, b].some((id) => uppers.includes(id)) && [a, b].some((id) => lowers.includes(id));
    const taken = round ? [a, b, 'round'] : [a, b];
    if (a === b || taken.some((id) => (used.get(id) ?? 0) >= most(id))) continue;
    for (const id of taken) used.set(id, (used.get(id) ?? 0) + 1);
    kept.push({ key: `w${kept.length}`, ends: [a, b] });
  }
  return kept;
}

const end = fc.oneof(fc.constantFrom(...uppers), fc.constantFrom(...lowers), fc.constantFrom(...terminals));
const crowded = fc.constantFrom(...uppers.slice(0, 4), ...lowers.slice(0, 4), ...terminals.slice(0, 4));
const landed = fc.tuple(fc.constantFrom(...uppers, ...lowers), fc.constantFrom(...terminals));
const wirings = fc
  .oneof(
    fc.array(fc.tuple(end, end), { maxLength: 60, size: 'max' }),
    fc.array(landed, { maxLength: 60, size: 'max' }),
    fc.array(fc.tuple(crowded, end), { maxLength: 60, size: 'max' }),
  )
  .map(fitting);

/** Small terminals right below the leads, so that wires swap columns often and need jogs. */
const cramped = {
  ...board,
  strip: board.upper.slice(0, 12).map(({ x }, i) => ({ id: `${i + 1}`, x, width: 12 })),
};
const swaps = fc
  .tuple(
    fc.shuffledSubarray(uppers.slice(0, 12), { minLength: 2 }),
    fc.shuffledSubarray(terminals, { minLength: 12, maxLength: 12 }),
  )
  .map(([leads, boxes]) => leads.map((lead, i): [string, string] => [lead, boxes[i] as string]))
  .map(fitting);

describe('routing any wiring', () => {
  test('wires that swap columns in any circle still keep apart', () => {
    fc.assert(
      fc.property(swaps, (wires) => {
        expect(faults(cramped, wires, route(cramped, wires))).toEqual([]);
      }),
      { seed: 19, numRuns: 100 },
    );
  });

  test('every wire meets its own ends, keeps to its lanes and never runs along another', () => {
    fc.assert(
      fc.property(wirings, (wires) => {
        expect(faults(board, wires, route(board, wires))).toEqual([]);
      }),
      { seed: 20, numRuns: 400 },
    );
  });

  test('the same wires give the same picture in whatever order they were landed', () => {
    const shuffled = wirings.chain((wires) =>
      fc.tuple(
        fc.constant(wires),
        fc.shuffledSubarray(wires, { minLength: wires.length, maxLength: wires.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([wires, mixed]) => {
        expect(route(board, mixed)).toEqual(route(board, wires));
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  test('every listed crossing lies on a level stretch of one wire and an upright one of the other', () => {
    fc.assert(
      fc.property(wirings, (wires) => {
        const { wires: lines, crossings } = route(board, wires);
        const passes = (key: string, x: number, y: number, level: boolean): boolean => {
          const points = lines.find((line) => line.key === key)?.points ?? [];
          return points.slice(1).some(([bx, by], i) => {
            const [ax, ay] = points[i] as [number, number];
            return level
              ? ay === y && by === y && Math.min(ax, bx) < x && x < Math.max(ax, bx)
              : ax === x && bx === x && Math.min(ay, by) < y && y < Math.max(ay, by);
          });
        };
        for (const { x, y, over, under } of crossings) {
          expect(over).not.toBe(under);
          expect(passes(over, x, y, true) && passes(under, x, y, false)).toBe(true);
        }
      }),
      { seed: 22, numRuns: 60 },
    );
  });
});
