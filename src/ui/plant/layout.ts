import type { Part, System } from '../../engine/model/system.ts';
import { bodies, connections, type Figure, figureOf } from './figure.ts';
import { returns } from './returns.ts';
import { widthOf } from './text.ts';
import { isEnd, readTree, type Stop, type Tree } from './tree.ts';

export type Point = readonly [x: number, y: number];

/** A part in the drawing: the middle and the size of its body. */
export interface Placed {
  readonly part: Part;
  readonly figure: Figure;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** The ports of a three-port valve by where they face. */
  readonly faces?: { readonly left: string; readonly up: string; readonly down: string };
}

/** A pipe, its points in the order the water runs, and the takers it serves. */
export interface Run {
  readonly side: 'flow' | 'return';
  readonly points: readonly Point[];
  readonly serves: readonly string[];
  /** Set on a way through a valve: the valve's id and the port the water leaves by. */
  readonly inside?: { readonly part: string; readonly exit: string };
}

/** The whole drawing. Sizes are in drawing units. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly Placed[];
  readonly runs: readonly Run[];
  /** Heights of the main flow pipe and of the return, and where the takers begin. */
  readonly trunk: number;
  readonly base: number;
  readonly takersFrom: number;
}

const LEFT = 4;
/** From a heat source's edge to the middle of the first stop, and from one source to the next. */
const AFTER_SOURCE = 18;
const BETWEEN_SOURCES = 14;
const STEP = 58;
/** Room between two rows, so that a three-port and its port names fit between them. */
const ROW = 92;

/** From a row down to the return below it, with a valve's words and the return's between. */
const WORDS_UNDER = 68;

/** The figure of a part at the end of a way. */
export function endFigure({ kind }: Part): 'cylinder' | 'radiators' | 'bypass' {
  const figure = figureOf(kind);
  return figure === 'cylinder' || figure === 'bypass' ? figure : 'radiators';
}

/** How many stops lie one behind another before the takers. */
const depth = (stop: Stop): number =>
  stop.ways.length === 0 ? 0 : 1 + Math.max(...stop.ways.map((way) => depth(way.stop)));

/**
 * Lays out a heating loop, the first of the system unless told: boiler on the left, takers in rows on the right, valves between, flow along the
 * top and return along the bottom. Throws an Error when the pipes are not one boiler's loop (see readTree).
 */
export function layOut(system: System, tree: Tree = readTree(system)): Drawing {
  const stops = depth(tree.first);
  const sources = [...tree.beside, tree.source];
  const [least, boilerHeight] = bodies.boiler;
  const widths = sources.map(({ short }) => Math.max(least, widthOf(short) + 8));
  const middles = widths.map((w, k) => {
    const before = widths.slice(0, k).reduce((sum, other) => sum + other + BETWEEN_SOURCES, 0);
    return LEFT + before + w / 2;
  });
  const boilerX = middles.at(-1)!;
  // The words under a valve need more room beside the source than a pump does.
  const first = tree.first.part;
  const after = first && figureOf(first.kind) === 'two-port' ? AFTER_SOURCE + 18 : AFTER_SOURCE;
  const firstX = boilerX + widths.at(-1)! / 2 + after;
  const takersFrom = firstX + STEP * Math.max(stops, 3) - 2;
  const parts: Placed[] = [];
  const runs: Run[] = [];

  const rows = new Map<string, number>();
  let under = 2;
  let above = -ROW;
  const placeTaker = (part: Part) => {
    const figure = endFigure(part);
    const [w, h] = bodies[figure];
    const words = figure === 'cylinder' ? 0 : 18;
    const row = Math.max(under + words + connections[figure].in, above + ROW);
    const top = row - connections[figure].in;
    parts.push({ part, figure, x: takersFrom + w / 2, y: top + h / 2, w, h });
    rows.set(part.id, row);
    under = top + h + 12 + words;
    above = row;
  };
  const partOf = (id: string) => system.parts.find((part) => part.id === id);
  for (const id of tree.first.takers) {
    const part = partOf(id);
    if (part) placeTaker(part);
  }

  /** The height of a stop: a taker's own row, in line with a middle way, or midway between two. */
  const heightOf = (stop: Stop): number => {
    if (stop.ways.length === 0) return rows.get(stop.takers[0] ?? '') ?? 0;
    const heights = stop.ways.map((way) => heightOf(way.stop));
    const upper = heights[Math.floor((heights.length - 1) / 2)] ?? 0;
    const lower = heights[Math.ceil((heights.length - 1) / 2)] ?? 0;
    return (upper + lower) / 2;
  };

  /** Places a stop and all that follows; `from` are the points of the pipe that comes to it. */
  const follow = (stop: Stop, column: number, from: readonly Point[]) => {
    const y = heightOf(stop);
    const { part, takers: serves } = stop;
    const x = firstX + STEP * column;
    const figure = part ? figureOf(part.kind) : undefined;
    const [w, h] = figure ? bodies[figure] : [0, 0];
    const arrive: Point = stop.ways.length === 0 ? [takersFrom, y] : [x - w / 2, y];
    runs.push({ side: 'flow', points: [...from, arrive], serves });
    if (stop.ways.length === 0) return;
    if (part && figure) {
      const [up, down] = stop.ways;
      const faces =
        figure === 'three-port'
          ? { left: stop.entry, up: up?.port ?? '', down: down?.port ?? '' }
          : undefined;
      if (faces && stop.ways.length !== 2) throw new Error(`"${part.id}" must lead two ways`);
      parts.push({ part, figure, x, y, w, h, ...(faces && { faces }) });
    }
    stop.ways.forEach((way, k) => {
      const row = heightOf(way.stop);
      const serves = way.stop.takers;
      const turn = stop.ways.length === 1 ? x + w / 2 : x;
      const out: Point = stop.ways.length === 1 ? [turn, y] : [x, y + (k === 0 ? -h : h) / 2];
      if (part && figure !== 'pump') {
        const inner: Point[] = stop.ways.length === 1 ? [arrive, out] : [arrive, [x, y], out];
        runs.push({ side: 'flow', points: inner, serves, inside: { part: part.id, exit: way.port } });
      }
      follow(way.stop, column + 1, row === out[1] ? [out] : [out, [turn, row]]);
    });
  };

  const trunk = heightOf(tree.first);
  const backRoom = tree.back.length > 0 ? 18 : 0;
  // A valve in front of the lowest radiators has its words under it, and the return's own stand over the pipe.
  const words = parts.at(-1)?.figure === 'cylinder' ? 0 : above + WORDS_UNDER;
  const base = Math.max(under + backRoom, words, trunk + 36 + boilerHeight + 18);
  const boilerBottom = base - 18;
  const boilerTop = boilerBottom - boilerHeight;
  const all = tree.first.takers;
  sources.forEach((part, k) => {
    const x = middles[k]!;
    parts.push({
      part,
      figure: 'boiler',
      x,
      y: boilerBottom - boilerHeight / 2,
      w: widths[k]!,
      h: boilerHeight,
    });
    if (part === tree.source) return;
    // A source beside the main one joins its flow from the left, and takes its return from there.
    runs.push({
      side: 'flow',
      points: [
        [x, boilerTop],
        [x, trunk],
        [boilerX, trunk],
      ],
      serves: all,
    });
    runs.push({
      side: 'return',
      points: [
        [boilerX, base],
        [x, base],
        [x, boilerBottom],
      ],
      serves: all,
    });
  });
  follow(tree.first, 0, [
    [boilerX, boilerTop],
    [boilerX, trunk],
  ]);

  const back = tree.back.map((part, k): Placed => {
    const figure = figureOf(part.kind);
    const [w, h] = bodies[figure];
    return { part, figure, x: firstX + 18 + STEP * k, y: base, w, h };
  });
  const takers = parts.filter(({ part }) => isEnd(part));
  runs.push(...returns(takers, back, { base, boiler: [boilerX, boilerBottom], takersFrom }));
  const width = takersFrom + 88;
  return { width, height: base + 8 + backRoom, parts: [...parts, ...back], runs, trunk, base, takersFrom };
}
