import { describe, expect, test } from 'vitest';
import type { System } from '../../../src/engine/model/system.ts';
import { bonnet } from '../../../src/ui/plant/figure.ts';
import { allAtWork, heatIn } from '../../../src/ui/plant/heat.ts';
import { boxOf, labelsFor, SIZE } from '../../../src/ui/plant/labels.ts';
import { layOut, type Placed, type Point } from '../../../src/ui/plant/layout.ts';
import { isEnd, partsOf, readLoops, type Tree } from '../../../src/ui/plant/tree.ts';
import { librarySystems } from '../../engine/support/library.ts';
import { systemNamed, systems } from './loops.ts';

interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

const bodyOf = ({ x, y, w, h }: Placed): Box => ({ x: x - w / 2, y: y - h / 2, w, h });
const bonnetOf = ({ x, y, h }: Placed): Box => ({ x: x - bonnet.w / 2, y: y - h / 2 - bonnet.h, ...bonnet });
const overlap = (a: Box, b: Box, slack = 0): boolean =>
  a.x + a.w > b.x + slack && b.x + b.w > a.x + slack && a.y + a.h > b.y + slack && b.y + b.h > a.y + slack;

/** The pipe between two points as a box, `half` to either side. */
const straight = ([ax, ay]: Point, [bx, by]: Point, half: number): Box => ({
  x: Math.min(ax, bx) - half,
  y: Math.min(ay, by) - half,
  w: Math.abs(bx - ax) + 2 * half,
  h: Math.abs(by - ay) + 2 * half,
});
const straights = (points: readonly Point[], half: number): Box[] =>
  points.slice(1).map((to, k) => straight(points[k] ?? to, to, half));

const courses = librarySystems.map(({ id, system }): [string, System] => [id, system]);
const loops = [...systems, ...courses].flatMap(([id, system]) =>
  readLoops(system).map((loop): [string, System, Tree] => [
    `${id}, from its ${loop.source.id}`,
    system,
    loop,
  ]),
);

/** At most this many places are looked at, spread over all. */
const MOST_PLACES = 120;
const placesOf = ({ places }: System): number[] => {
  const step = Math.max(1, Math.floor(places / MOST_PLACES));
  return Array.from({ length: Math.ceil(places / step) }, (_, k) => k * step);
};
const atWork = (system: System, loop: Tree, place: number, fires: boolean, pumps: boolean) =>
  heatIn(system, place, loop, allAtWork(system, fires, pumps));

describe.each(loops)('the pipework of %s', (_id, system, loop) => {
  const drawing = layOut(system, loop);
  const outside = drawing.runs.filter((run) => !run.inside);
  const bodies = drawing.parts.map(bodyOf);
  const bonnets = drawing.parts.filter(({ figure }) => figure === 'two-port').map(bonnetOf);
  const piped = partsOf(loop);

  test('every part with water in it is drawn once, inside the picture', () => {
    expect(drawing.parts.map(({ part }) => part.id).sort()).toEqual(piped.map(({ id }) => id).sort());
    for (const body of bodies) {
      expect(body.x).toBeGreaterThanOrEqual(0);
      expect(body.y).toBeGreaterThanOrEqual(0);
      expect(body.x + body.w).toBeLessThanOrEqual(drawing.width);
      expect(body.y + body.h).toBeLessThanOrEqual(drawing.height);
    }
  });

  test('no part stands on another', () => {
    bodies.forEach((a, k) => {
      for (const b of bodies.slice(k + 1)) expect(overlap(a, b)).toBe(false);
    });
  });

  test('no pipe runs through a part', () => {
    for (const run of outside) {
      for (const pipe of straights(run.points, 0.1)) {
        for (const body of bodies) expect(overlap(pipe, body, 1), JSON.stringify({ pipe, body })).toBe(false);
      }
    }
  });

  test('pipes run level or upright, and every taker has a flow and a return', () => {
    for (const { points } of drawing.runs) {
      points.slice(1).forEach(([x, y], k) => {
        const [px, py] = points[k] ?? [x, y];
        expect(x === px || y === py).toBe(true);
      });
    }
    for (const { part } of drawing.parts.filter(({ part }) => isEnd(part))) {
      const sides = outside.filter(({ serves }) => serves.includes(part.id)).map(({ side }) => side);
      expect(new Set(sides)).toEqual(new Set(['flow', 'return']));
    }
  });

  test('the flow runs along the top and the return along the bottom', () => {
    const lowest = (side: string) =>
      Math.max(
        ...outside.filter((run) => run.side === side).flatMap(({ points }) => points.map(([, y]) => y)),
      );
    expect(lowest('return')).toBe(drawing.base);
    expect(lowest('flow')).toBeLessThan(drawing.base);
    expect(drawing.trunk).toBeLessThan(drawing.base);
  });

  test('in every state no word lies on another, on a pipe, or off the picture', () => {
    const pipes = outside.flatMap(({ points }) => straights(points, 4.75));
    for (const place of placesOf(system)) {
      for (const [fires, pumps] of [
        [false, false],
        [true, false],
        [false, true],
        [true, true],
      ] as const) {
        const labels = labelsFor(
          system,
          drawing,
          atWork(system, loop, place, fires, pumps),
          place,
          'tripped',
        );
        const boxes = labels.map((label) => ({ ...boxOf(label), text: label.text }));
        boxes.forEach((box, k) => {
          const clash = [...boxes.slice(k + 1), ...pipes, ...bonnets].filter((other) => overlap(box, other));
          expect(clash, `${box.text} in place ${place}`).toEqual([]);
          expect(box.x >= 0 && box.x + box.w <= drawing.width && box.y >= 0, box.text).toBe(true);
        });
      }
    }
  });

  test('in every state a word lies wholly inside a part or wholly outside it', () => {
    for (const place of placesOf(system)) {
      for (const label of labelsFor(
        system,
        drawing,
        atWork(system, loop, place, true, true),
        place,
        'healthy',
      )) {
        const box = boxOf(label);
        for (const body of bodies) {
          const inside =
            box.x >= body.x &&
            box.x + box.w <= body.x + body.w &&
            box.y >= body.y &&
            box.y + box.h <= body.y + body.h;
          expect(inside || !overlap(box, body), label.text).toBe(true);
        }
      }
    }
  });
});

test('words are at least 11 px where the flagship is 328 px wide', () => {
  const { width, height } = layOut(systemNamed('unvented-three-port'));
  expect((SIZE * 328) / width).toBeGreaterThanOrEqual(11);
  expect((height * 330) / width).toBeLessThanOrEqual(320);
});

test('a part that the pipes do not bring back to the boiler is named', () => {
  const system = systemNamed('radiators-only');
  const cut = { ...system, spec: { ...system.spec, pipes: system.spec.pipes.slice(0, 2) } };
  expect(() => layOut(cut)).toThrow('the return of "radiators" does not reach the boiler');
});
