import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import type { Core } from '../../engine/model/part.ts';
import type { System } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { route } from '../board/lanes/route.ts';
import { pathOf } from '../board/paths.ts';
import { coreAt, coreOf } from '../wiring/cores.ts';
import { layBoard, type PartBox } from '../wiring/layout.ts';
import { markOf } from '../wiring/names.ts';

/** Height of the parts' boxes, px. */
export const BOX = 64;
/** Leads closer than this cannot be told apart by their marks, px. */
export const CLOSEST = 25;

/** A wired strip as a still drawing: lengths in px, y = 0 at the top of the upper parts. */
export interface StripDrawing {
  readonly width: number;
  readonly height: number;
  /** Top edge of the strip and of the lower boxes. */
  readonly stripY: number;
  readonly stripHeight: number;
  readonly lowerY: number;
  readonly boxes: readonly PartBox[];
  readonly ways: readonly { readonly mark: string; readonly x: number; readonly width: number }[];
  readonly pins: readonly {
    readonly x: number;
    readonly y: number;
    readonly upper: boolean;
    readonly mark: readonly string[];
    readonly core: Core;
  }[];
  readonly wires: readonly { readonly path: string; readonly core: Core; readonly quiet: boolean }[];
}

/**
 * Draws a wiring on the strip; undefined where the parts have too many leads for one drawing of this width.
 * @param least where leads would stand closer than so many px, the drawing grows wider instead
 */
export function drawStrip(system: System, wires: readonly Wire[], least = 0): StripDrawing | undefined {
  const { boxes, shape, strip, stripId, width } = layBoard(system, least);
  const close = boxes.some(({ pins }) =>
    pins.some(({ x }, k) => k > 0 && x - (pins[k - 1]?.x ?? 0) < CLOSEST),
  );
  if (close || stripId === '') return undefined;
  const joints = wireJoints(system, wires);
  const permanent = {
    neutral: joinedTo(joints, system.supply.out.neutral),
    earth: joinedTo(joints, system.supply.out.earth),
  };
  const routing = route(
    shape,
    wires.map((ends) => ({ key: wireKey(ends), ends: [ends[0], ends[1]] })),
  );
  const stripY = BOX + routing.upperHeight;
  const lowerY = stripY + shape.stripHeight + routing.lowerHeight;
  return {
    width,
    height: lowerY + BOX,
    stripY,
    stripHeight: shape.stripHeight,
    lowerY,
    boxes,
    ways: strip.map(({ id, x, width: wide }) => ({ mark: markOf(id), x, width: wide })),
    pins: boxes.flatMap(({ pins, row }) =>
      pins.map(({ id, x }) => ({
        x,
        y: row === 'upper' ? BOX : lowerY,
        upper: row === 'upper',
        mark: markOf(id).split('-'),
        core: coreAt(system, id) ?? 'black',
      })),
    ),
    wires: wires.map((ends) => {
      const routed = routing.wires.find(({ key }) => key === wireKey(ends));
      const core = coreOf(system, ends, permanent);
      return {
        path: routed ? pathOf(routed, routing.crossings) : '',
        core,
        quiet: core === 'blue' || core === 'green-yellow',
      };
    }),
  };
}
