import { describe, expect, test } from 'vitest';
import { type BoardShape, route, type Wire } from '../../../../src/ui/board/lanes/route.ts';
import { board, job } from './board.ts';
import { faults, laneHeights, stretches } from './judge.ts';

const line = (wires: Wire[], key: string) => {
  const found = route(board, wires).wires.find((wire) => wire.key === key);
  if (!found) throw new Error(`no wire ${key}`);
  return found;
};

describe('the fully wired job', () => {
  const routing = route(board, job);

  test('all 33 wires are drawn and none runs along another', () => {
    expect(routing.wires).toHaveLength(33);
    expect(faults(board, job, routing)).toEqual([]);
  });

  // These two limits are ours, measured on the picture we judged readable.
  test('both channels keep within 190 px with lanes a full pitch apart', () => {
    expect(Math.max(routing.upperHeight, routing.lowerHeight)).toBeLessThanOrEqual(190);
    const ys = laneHeights(routing, board.stripHeight);
    expect(ys.length).toBeLessThanOrEqual(24);
    const gaps = ys.slice(1).map((y, i) => y - (ys[i] as number));
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(board.lane - 1e-6);
  });

  test('wires cross fewer than ninety times', () => {
    expect(routing.crossings.length).toBeLessThan(90);
  });
});

describe('single wires', () => {
  test('a lead right above its terminal gets a straight wire', () => {
    const wires: Wire[] = [{ key: 'a', ends: ['room-stat/CALL', '7'] }];
    const shape = { ...board, strip: board.strip.map((t) => (t.id === '7' ? { ...t, x: 440 } : t)) };
    expect(route(shape, wires).wires[0]?.points.map(([x]) => x)).toEqual([444, 444]);
  });

  test('a link between neighbours lies closest to the strip', () => {
    const wires = [...job, { key: 'link', ends: ['3', '4'] as [string, string] }];
    const { wires: lines, upperHeight } = route(board, wires);
    const foot = upperHeight + board.stripHeight;
    const away = (key: string): number[] =>
      stretches(lines.find((wire) => wire.key === key) as (typeof lines)[0])
        .filter(({ a, b }) => a[1] === b[1])
        .map(({ a }) => (a[1] < upperHeight ? upperHeight - a[1] : a[1] - foot));
    const link = Math.max(...away('link'));
    expect(Math.min(...job.flatMap(({ key }) => away(key)))).toBeGreaterThanOrEqual(link);
  });

  test('a wire from an upper to a lower lead passes outside the strip', () => {
    const wires: Wire[] = [{ key: 'direct', ends: ['boiler/L', 'cut-out/IN'] }];
    const { points } = line(wires, 'direct');
    expect(Math.max(...points.map(([x]) => x))).toBeGreaterThan(738 + 49 / 2);
    expect(points.at(-1)).toEqual([712, 0]);
  });

  test('two wires on one lead leave it side by side', () => {
    const wires: Wire[] = [
      { key: 'a', ends: ['programmer/L', '1'] },
      { key: 'b', ends: ['programmer/L', '9'] },
    ];
    const column = (key: string): number =>
      stretches(line(wires, key)).find(({ a, b }) => a[0] === b[0])?.a[0] ?? Number.NaN;
    expect([column('a'), column('b')]).toEqual([166.5, 173.5]);
  });

  test('two wires that swap columns are told apart by a jog, clear of a wire between them', () => {
    const shape: BoardShape = {
      ...board,
      upper: [
        { id: 'p', x: 100 },
        { id: 'q', x: 200 },
        { id: 'r', x: 150 },
      ],
      lower: [],
      strip: [
        { id: '1', x: 100, width: 12 },
        { id: '2', x: 200, width: 12 },
        { id: '3', x: 150, width: 12 },
      ],
    };
    const wires: Wire[] = [
      { key: 'p', ends: ['p', '2'] },
      { key: 'q', ends: ['q', '1'] },
      { key: 'r', ends: ['r', '3'] },
    ];
    const routing = route(shape, wires);
    expect(faults(shape, wires, routing)).toEqual([]);
    expect(routing.wires.map(({ points }) => points.length).sort()).toEqual([2, 4, 6]);
  });

  test('a wire to nowhere or back to its own end is refused', () => {
    expect(() => route(board, [{ key: 'a', ends: ['spur/L', '13'] }])).toThrow(RangeError);
    expect(() => route(board, [{ key: 'a', ends: ['4', '4'] }])).toThrow(RangeError);
  });

  test('an empty board keeps its least heights', () => {
    expect(route(board, [])).toEqual({ wires: [], upperHeight: 150, lowerHeight: 150, crossings: [] });
  });

  test('lanes draw together to 5 px before the channel grows past its limit', () => {
    const tight = route({ ...board, minUpper: 60, maxUpper: 110 }, job);
    expect(tight.upperHeight).toBe(110);
    expect(faults(board, job, tight)).toEqual([]);
    expect(route({ ...board, minUpper: 60, maxUpper: 70 }, job).upperHeight).toBeGreaterThan(70);
  });
});
