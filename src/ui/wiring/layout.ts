import type { Part, System } from '../../engine/model/system.ts';
import type { BoardShape, Pin, StripTerminal } from '../board/lanes/route.ts';

/** A part on the board: a box with its leads along the edge that faces the strip. */
export interface PartBox {
  readonly part: Part;
  readonly row: 'upper' | 'lower';
  readonly x: number;
  readonly width: number;
  readonly pins: readonly Pin[];
}

export interface BoardLayout {
  readonly width: number;
  readonly boxes: readonly PartBox[];
  readonly stripId: string;
  readonly strip: readonly StripTerminal[];
  readonly shape: BoardShape;
}

/** A board wider than this, px, is not scaled down to the page but scrolls. */
export const BIG_BOARD = 860;

/** Width the board is drawn at, px; the page scales it. */
const WIDTH = 800;
const EDGE = 14;
/** Space between the last lead of a part and the first of the next, in lead pitches. */
const BETWEEN = 1.7;
/** How far a part's box reaches past its first and last lead, in lead pitches. */
const PAD = 0.68;

/** Parts that act (move, fire, pump) stand below the strip, parts that ask above it. */
const acts = ({ kind }: Part): boolean => kind.motion !== undefined || kind.work !== undefined;

/** Lead pitches from one end of a row to the other. */
const unitsOf = (parts: readonly Part[]): number =>
  parts.reduce((sum, { kind }) => sum + kind.terminals.length - 1, 0) +
  (parts.length - 1) * BETWEEN +
  2 * PAD;

function row(parts: readonly Part[], where: PartBox['row'], width: number): PartBox[] {
  const units = unitsOf(parts);
  const pitch = Math.min(46, (width - 2 * EDGE) / units);
  const used = pitch * units;
  let x = (width - used) / 2 + PAD * pitch;
  return parts.map((part) => {
    const pins = part.kind.terminals.map(({ id }, k) => ({
      id: `${part.id}/${id}`,
      x: Math.round(x + k * pitch),
    }));
    const span = pitch * (pins.length - 1);
    const box = { part, row: where, x: x - PAD * pitch, width: span + 2 * PAD * pitch, pins };
    x += span + BETWEEN * pitch;
    return box;
  });
}

/**
 * Places every part and every strip terminal of a system; `lane` is the distance between wires, px. The board grows wider
 * where leads would stand closer than `least` px.
 */
export function layBoard(system: System, least = 0): BoardLayout {
  const wired = system.parts.filter(({ kind }) => kind.terminals.length > 0 && kind.kind !== 'strip');
  const [asks, does] = [wired.filter((part) => !acts(part)), wired.filter(acts)];
  const joints = system.parts.find(({ kind }) => kind.kind === 'strip');
  const ways = joints?.kind.terminals ?? [];
  const most = Math.max(unitsOf(asks), unitsOf(does), ways.length);
  const width = Math.max(WIDTH, Math.ceil(most * least) + 2 * EDGE);
  const boxes = [...row(asks, 'upper', width), ...row(does, 'lower', width)];
  const pitch = (width - 2 * EDGE) / Math.max(1, ways.length);
  const strip = ways.map(({ id }, k) => ({
    id: `${joints!.id}/${id}`,
    x: EDGE + pitch * (k + 0.5),
    width: Math.min(58, pitch - 8),
  }));
  return {
    width,
    boxes,
    stripId: joints?.id ?? '',
    strip,
    shape: {
      upper: boxes.filter(({ row: r }) => r === 'upper').flatMap(({ pins }) => pins),
      lower: boxes.filter(({ row: r }) => r === 'lower').flatMap(({ pins }) => pins),
      strip,
      left: 2,
      right: width - 2,
      lane: 12,
      slot: 7,
      stripHeight: 50,
      minUpper: 150,
      minLower: 150,
      maxUpper: 165,
      maxLower: 165,
    },
  };
}
