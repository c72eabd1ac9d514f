import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import type { Core } from '../../engine/model/part.ts';
import type { Part, System } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { route } from '../board/lanes/route.ts';
import { pathOf } from '../board/paths.ts';
import { coreAt, coreCode, coreOf } from '../wiring/cores.ts';
import { markOf } from '../wiring/names.ts';

/*
  The strip stands upright in the middle of the sheet, parts that ask to its left and parts that act to its right, so that
  every terminal has its name beside it in letters of a readable size, and the room between is free for a pencil.
  Lengths in quarters of a millimetre on A4.
*/

/** Height that a sheet has for the drawing: 229 mm. */
const SHEET = 916;
export const LABELS = 150;
export const STRIP = 58;
const CHANNEL = 180;
/** From terminal to terminal: least, and where there is room for a pencil. */
const PITCH = { least: 22, most: 38 };
const NAME = 24;
const BETWEEN = 14;
/** Least room from one way of the strip to the next, and most. */
const WAY = { least: 26, most: 64 };
/** Room beyond each end of the strip, where a wire from side to side goes past it. */
const AROUND = 24;

export interface SheetPin {
  readonly id: string;
  readonly mark: string;
  /** Letters of its core. */
  readonly code: string;
  readonly y: number;
  /** Ways of the strip, or other terminals, that it is joined to in the drawing. */
  readonly lands: string;
}

export interface SheetPart {
  readonly part: Part;
  readonly name: string;
  readonly side: 'left' | 'right';
  readonly y: number;
  readonly height: number;
  readonly pins: readonly SheetPin[];
}

/** How a wire is drawn in black: neutrals and earths are told from the rest by their pattern. */
export type Pattern = 'solid' | 'neutral' | 'earth';

export interface StripSheet {
  readonly width: number;
  readonly height: number;
  readonly stripX: number;
  readonly rightX: number;
  readonly parts: readonly SheetPart[];
  readonly ways: readonly { readonly mark: string; readonly y: number; readonly height: number }[];
  /** Paths in the drawing's own frame: x along the strip, y from the left labels to the right. */
  readonly wires: readonly { readonly key: string; readonly path: string; readonly pattern: Pattern }[];
}

/** Parts that act (move, fire, pump) stand on the right, parts that ask on the left. */
const acts = ({ kind }: Part): boolean => kind.motion !== undefined || kind.work !== undefined;

const heightOf = ({ kind }: Part, pitch: number): number => NAME + kind.terminals.length * pitch;

const tall = (parts: readonly Part[], pitch: number): number =>
  parts.reduce((sum, part) => sum + heightOf(part, pitch), 0) + Math.max(0, parts.length - 1) * BETWEEN;

/** Parts in columns, each no higher than a sheet. */
function columns(parts: readonly Part[]): Part[][] {
  const made: Part[][] = [[]];
  let used = 0;
  for (const part of parts) {
    const height = heightOf(part, PITCH.least);
    if (used > 0 && used + BETWEEN + height > SHEET) {
      made.push([]);
      used = 0;
    }
    made.at(-1)?.push(part);
    used += (used > 0 ? BETWEEN : 0) + height;
  }
  return made;
}

const PATTERNS: Partial<Record<Core, Pattern>> = { blue: 'neutral', 'green-yellow': 'earth' };

/**
 * A strip to draw on, or one with wires drawn, on as many sheets as its parts need; each sheet shows the whole strip.
 * A wire between parts that stand on two sheets is drawn on neither; its lands are written at both ends.
 * @param isRoomy spreads the terminals over the sheet, to draw between them
 */
export function stripSheets(system: System, wires: readonly Wire[], isRoomy = false): StripSheet[] {
  const wired = system.parts.filter(({ kind }) => kind.terminals.length > 0 && kind.kind !== 'strip');
  const left = columns(wired.filter((part) => !acts(part)));
  const right = columns(wired.filter(acts));
  const count = Math.max(left.length, right.length);
  return Array.from({ length: count }, (_, k) => {
    const sides = { left: left[k] ?? [], right: right[k] ?? [] };
    return sheetOf(system, wires, sides, isRoomy ? roomyPitch(sides) : PITCH.least, k === 0);
  });
}

interface Sides {
  readonly left: readonly Part[];
  readonly right: readonly Part[];
}

/** The widest spacing at which both sides still fit on the sheet. */
function roomyPitch({ left, right }: Sides): number {
  const fits = (parts: readonly Part[]) => {
    const terminals = parts.reduce((sum, { kind }) => sum + kind.terminals.length, 0);
    return terminals === 0 ? PITCH.most : Math.floor((SHEET - tall(parts, 0)) / terminals);
  };
  return Math.max(PITCH.least, Math.min(PITCH.most, fits(left), fits(right)));
}

function sheetOf(
  system: System,
  wires: readonly Wire[],
  { left, right }: Sides,
  leadPitch: number,
  isFirst: boolean,
): StripSheet {
  const strips = system.parts.filter(({ kind }) => kind.kind === 'strip');
  const joints = strips.flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}/${terminal.id}`));
  const height = Math.max(
    tall(left, leadPitch),
    tall(right, leadPitch),
    joints.length * WAY.least + 2 * AROUND,
  );
  const pitch = Math.min(WAY.most, (height - 2 * AROUND) / Math.max(1, joints.length));
  const from = (height - pitch * joints.length) / 2;
  const placed = [
    ...place(system, wires, left, 'left', height, leadPitch),
    ...place(system, wires, right, 'right', height, leadPitch),
  ];
  const leads = (side: SheetPart['side']) =>
    placed.filter((box) => box.side === side).flatMap(({ pins }) => pins.map(({ id, y }) => ({ id, x: y })));
  const strip = joints.map((id, k) => ({ id, x: from + pitch * (k + 0.5), width: pitch - 6 }));
  const there = new Set([...placed.flatMap(({ pins }) => pins.map(({ id }) => id)), ...joints]);
  const isLink = ([a, b]: Wire) => joints.includes(a) && joints.includes(b);
  const drawn = wires.filter((wire) => wire.every((end) => there.has(end)) && (isFirst || !isLink(wire)));
  const routing = route(
    {
      upper: leads('left'),
      lower: leads('right'),
      strip,
      left: 2,
      right: height - 2,
      lane: 9,
      slot: 7,
      stripHeight: STRIP,
      minUpper: CHANNEL,
      minLower: CHANNEL,
      maxUpper: CHANNEL,
      maxLower: CHANNEL,
    },
    drawn.map((ends) => ({ key: wireKey(ends), ends: [ends[0], ends[1]] })),
  );
  const joined = wireJoints(system, wires);
  const permanent = {
    neutral: joinedTo(joined, system.supply.out.neutral),
    earth: joinedTo(joined, system.supply.out.earth),
  };
  const stripX = LABELS + routing.upperHeight;
  const rightX = stripX + STRIP + routing.lowerHeight;
  const lines = new Map(routing.wires.map((wire) => [wire.key, wire]));
  return {
    width: rightX + LABELS,
    height,
    stripX,
    rightX,
    parts: placed,
    ways: strip.map(({ id, x, width }) => ({ mark: markOf(id), y: x, height: width })),
    wires: drawn.map((ends) => {
      const key = wireKey(ends);
      const routed = lines.get(key);
      return {
        key,
        path: routed ? pathOf(routed, routing.crossings, 4, 3) : '',
        pattern: PATTERNS[coreOf(system, ends, permanent)] ?? 'solid',
      };
    }),
  };
}

/** Stands the parts of one side under each other, the room to spare shared out between them. */
function place(
  system: System,
  wires: readonly Wire[],
  parts: readonly Part[],
  side: SheetPart['side'],
  height: number,
  pitch: number,
): SheetPart[] {
  const used = parts.reduce((sum, part) => sum + heightOf(part, pitch), 0);
  const gap = Math.min(44, (height - used) / Math.max(1, parts.length - 1));
  let y = (height - used - gap * (parts.length - 1)) / 2;
  return parts.map((part) => {
    const top = y;
    y += heightOf(part, pitch) + gap;
    return {
      part,
      name: part.name.length > 20 ? part.short : part.name,
      side,
      y: top,
      height: heightOf(part, pitch),
      pins: part.kind.terminals.map((terminal, k): SheetPin => {
        const id = `${part.id}/${terminal.id}`;
        const core = coreAt(system, id);
        return {
          id,
          mark: terminal.id,
          code: core ? coreCode[core] : '',
          y: top + NAME + pitch * (k + 0.5),
          lands: landsOf(system, wires, id),
        };
      }),
    };
  });
}

/** What a terminal is joined to by its own wires: numbers of ways, and other terminals by their markings. */
function landsOf(system: System, wires: readonly Wire[], terminal: string): string {
  const onStrip = (end: string) =>
    system.parts.some(({ id, kind }) => kind.kind === 'strip' && end.startsWith(`${id}/`));
  return wires
    .flatMap(([a, b]) => (a === terminal ? [b] : b === terminal ? [a] : []))
    .map((end) => (onStrip(end) ? markOf(end) : `${partShort(system, end)} ${markOf(end)}`))
    .join(', ');
}

const partShort = ({ parts }: System, terminal: string): string =>
  parts.find(({ id }) => terminal.startsWith(`${id}/`))?.short ?? '';
