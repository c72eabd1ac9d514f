import { connections } from './figure.ts';
import { endFigure, type Placed, type Point, type Run } from './layout.ts';

/** The heights and places the return pipes keep to, in drawing units. */
interface Frame {
  readonly base: number;
  /** Where the return enters the boiler, from below. */
  readonly boiler: Point;
  readonly takersFrom: number;
}

/**
 * The return pipes. The lowest cylinder gives back on its left, as its flow comes in there; all others give
 * back on their right, into one pipe down the edge. Below they join and run left to the boiler.
 */
export function returns(takers: readonly Placed[], back: readonly Placed[], frame: Frame): Run[] {
  const { base, boiler, takersFrom } = frame;
  const edge = takersFrom + 79;
  const drop = takersFrom - 14;
  const last = takers[takers.length - 1];
  const dropped = last?.figure === 'cylinder' ? last : undefined;
  const runs: Run[] = [];
  const add = (points: Point[], serves: readonly string[]) => runs.push({ side: 'return', points, serves });
  const outOf = (taker: Placed): number => taker.y - taker.h / 2 + connections[endFigure(taker.part)].out;

  const right = takers.filter((taker) => taker !== dropped);
  right.forEach((taker, k) => {
    const y = outOf(taker);
    const below = right[k + 1];
    const stub: Point = [taker.x + taker.w / 2, y];
    const down: Point[] = below
      ? [[edge, outOf(below)]]
      : [
          [edge, base],
          [drop, base],
        ];
    if (k === 0) add([stub, [edge, y], ...down], [taker.part.id]);
    else {
      add([stub, [edge, y]], [taker.part.id]);
      add(
        [[edge, y], ...down],
        right.slice(0, k + 1).map(({ part }) => part.id),
      );
    }
  });
  if (dropped) {
    const y = outOf(dropped);
    add(
      [
        [dropped.x - dropped.w / 2, y],
        [drop, y],
        [drop, base],
      ],
      [dropped.part.id],
    );
  }

  const all = takers.map(({ part }) => part.id);
  let from: Point = [drop, base];
  for (const part of [...back].reverse()) {
    add([from, [part.x + part.w / 2, base]], all);
    from = [part.x - part.w / 2, base];
  }
  add([from, [boiler[0], base], boiler], all);
  return runs;
}
