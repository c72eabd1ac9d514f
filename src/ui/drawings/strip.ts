import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import type { Core } from '../../engine/model/part.ts';
import type { Part, System } from '../../engine/model/system.ts';
import { canonicalWires, type Wire, wireKey } from '../../engine/model/wiring.ts';
import { route } from '../board/lanes/route.ts';
import { pathOf } from '../board/paths.ts';
import { coreAt, coreCode, coreOf } from '../wiring/cores.ts';
import { markOf } from '../wiring/names.ts';

/** A part as a box with its leads along the edge that faces the strip. Lengths in drawing units, y from the top. */
export interface StripBox {
  readonly part: Part;
  readonly upper: boolean;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly pins: readonly StripPin[];
}

export interface StripPin {
  readonly node: number;
  readonly x: number;
  readonly y: number;
  /** Its marking in lines of a few letters, and the letters of its core. */
  readonly mark: readonly string[];
  readonly core: Core;
  readonly code: string;
}

export interface StripDrawing {
  readonly width: number;
  readonly height: number;
  readonly stripY: number;
  readonly boxes: readonly StripBox[];
  readonly ways: readonly { node: number; mark: string; x: number; width: number }[];
  readonly wires: readonly { key: string; node: number; path: string; core: Core; quiet: boolean }[];
}

/** Height of the parts' boxes and of the strip. */
export const BOX = 92;
export const STRIP = 44;
const EDGE = 14;
/** Room between two parts and beyond the outer leads of a part, in leads. */
const BETWEEN = 1.6;
const PAD = 0.68;

/** What the letters need, in drawing units: heights of boxes and strip, width of it all, room from lead to lead. */
export interface StripSizes {
  readonly box: number;
  readonly strip: number;
  readonly width: number;
  readonly leastPitch: number;
  readonly mostPitch: number;
  /** Least height of the wires above and below the strip, and from lane to lane. */
  readonly leastLanes: number;
  readonly lane: number;
}

const PAGE: StripSizes = {
  box: BOX,
  strip: STRIP,
  width: 820,
  leastPitch: 35,
  mostPitch: 48,
  leastLanes: 70,
  lane: 11,
};

/** Parts that act (move, fire, pump) stand below the strip, parts that ask above it. */
const acts = ({ kind }: Part): boolean => kind.motion !== undefined || kind.work !== undefined;

const unitsOf = (parts: readonly Part[]): number =>
  parts.reduce((sum, { kind }) => sum + kind.terminals.length - 1, 0) +
  (parts.length - 1) * BETWEEN +
  2 * PAD;

function rowOf(parts: readonly Part[], upper: boolean, width: number, most: number): Omit<StripBox, 'y'>[] {
  const units = unitsOf(parts);
  const pitch = Math.min(most, (width - 2 * EDGE) / units);
  let x = (width - pitch * units) / 2 + PAD * pitch;
  return parts.map((part) => {
    const pins = part.kind.terminals.map(({ id, core }, k): StripPin => {
      const mark = id.split('-').map((word, w, words) => (w < words.length - 1 ? `${word}-` : word));
      return { node: -1, x: Math.round(x + k * pitch), y: 0, mark, core, code: coreCode[core] };
    });
    const span = pitch * (pins.length - 1);
    const box = { part, upper, x: x - PAD * pitch, width: span + 2 * PAD * pitch, pins };
    x += span + BETWEEN * pitch;
    return box;
  });
}

/** Draws a wiring on the strip as wide as its parts need; sizes are those of a page unless told. */
export function drawStrip(system: System, wires: readonly Wire[], sizes: StripSizes = PAGE): StripDrawing {
  const wired = system.parts.filter(({ kind }) => kind.terminals.length > 0 && kind.kind !== 'strip');
  const above = wired.filter((part) => !acts(part));
  const below = wired.filter(acts);
  const strips = system.parts.filter(({ kind }) => kind.kind === 'strip');
  const joints = strips.flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}/${terminal.id}`));
  const least = Math.max(unitsOf(above), unitsOf(below), joints.length) * sizes.leastPitch + 2 * EDGE;
  const width = Math.round(Math.max(sizes.width, least));
  const pitch = (width - 2 * EDGE) / Math.max(1, joints.length);
  const strip = joints.map((id, k) => ({
    id,
    x: EDGE + pitch * (k + 0.5),
    width: Math.min(1.27 * sizes.strip, pitch - 8),
  }));
  const placed = [
    ...rowOf(above, true, width, sizes.mostPitch),
    ...rowOf(below, false, width, sizes.mostPitch),
  ];
  const leads = (upper: boolean) =>
    placed
      .filter((box) => box.upper === upper)
      .flatMap(({ part, pins }) =>
        pins.map(({ x }, k) => ({ id: `${part.id}/${part.kind.terminals[k]!.id}`, x })),
      );
  const shape = {
    upper: leads(true),
    lower: leads(false),
    strip,
    left: 2,
    right: width - 2,
    lane: sizes.lane,
    slot: 7,
    stripHeight: sizes.strip,
    minUpper: sizes.leastLanes,
    minLower: sizes.leastLanes,
  };
  const drawn = canonicalWires(wires);
  const routing = route(
    shape,
    drawn.map((ends) => ({ key: wireKey(ends), ends: [ends[0], ends[1]] })),
  );
  const stripY = sizes.box + routing.upperHeight;
  const lowerY = stripY + sizes.strip + routing.lowerHeight;
  const joined = wireJoints(system, wires);
  const permanent = {
    neutral: joinedTo(joined, system.supply.out.neutral),
    earth: joinedTo(joined, system.supply.out.earth),
  };
  const lines = new Map(routing.wires.map((wire) => [wire.key, wire]));
  return {
    width,
    height: lowerY + sizes.box,
    stripY,
    boxes: placed.map((box) => ({
      ...box,
      y: box.upper ? 0 : lowerY,
      pins: box.pins.map((pin, k) => {
        const id = `${box.part.id}/${box.part.kind.terminals[k]!.id}`;
        const core = coreAt(system, id) ?? 'black';
        return {
          ...pin,
          node: system.nodeOf.get(id)!,
          y: box.upper ? sizes.box : lowerY,
          core,
          code: coreCode[core],
        };
      }),
    })),
    ways: strip.map(({ id, x, width: wide }) => ({
      node: system.nodeOf.get(id)!,
      mark: markOf(id),
      x,
      width: wide,
    })),
    wires: drawn.map((ends) => {
      const key = wireKey(ends);
      const routed = lines.get(key);
      const core = coreOf(system, ends, permanent);
      return {
        key,
        node: system.nodeOf.get(ends[0])!,
        path: routed ? pathOf(routed, routing.crossings) : '',
        core,
        quiet: core === 'blue' || core === 'green-yellow',
      };
    }),
  };
}
