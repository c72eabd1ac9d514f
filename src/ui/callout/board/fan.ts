import type { Core } from '../../../engine/model/part.ts';
import type { LandedCore } from './seen.ts';

/** A core from its terminal into the cable of its part. Lengths in px of the drawing, x from the left, y from the terminals down. */
export interface FanCore {
  readonly key: string;
  readonly core: Core;
  readonly lifted: boolean;
  readonly path: string;
  /** The core's own x, the height of its letters, and the side that they stand on. */
  readonly x: number;
  readonly y: number;
  readonly side: 'left' | 'right';
  /** What its far end is in, where that can be seen. */
  readonly far: string | undefined;
}

/** A cable through the wall of the enclosure. */
export interface FanCable {
  readonly part: string;
  readonly x: number;
  readonly width: number;
}

export interface Fan {
  readonly width: number;
  readonly height: number;
  /** Where the sheaths begin. */
  readonly sheath: number;
  readonly cores: readonly FanCore[];
  readonly cables: readonly FanCable[];
}

/** A terminal's share of the width at most, and the height of the letters beside a core. */
const MOST_PITCH = 46;
const LETTERS = 28;
const BEND = 42;
const SHEATH = 22;
/** From core to core inside a cable. */
const CLOSE = 6;

/** Draws the cores of a part from its terminals, left to right, into one cable for each part that they come from. */
export function drawFan(terminals: readonly (readonly LandedCore[])[], most: number): Fan {
  const pitch = Math.min(MOST_PITCH, most / terminals.length);
  const width = Math.round(pitch * terminals.length);
  const deepest = Math.max(1, ...terminals.map(({ length }) => length));
  const start = LETTERS * deepest;
  const sheath = start + BEND;
  const all = terminals.flatMap((cores, t) =>
    cores.map((core, k) => ({
      core,
      x: pitch * (t + (k + 1) / (cores.length + 1)),
      k,
      first: k < (cores.length - 1) / 2,
    })),
  );
  // Cables stand in the order of their cores, so that few cores cross.
  const middleOf = (part: string) => {
    const xs = all.filter(({ core }) => core.farPart === part).map(({ x }) => x);
    return xs.reduce((sum, x) => sum + x, 0) / xs.length;
  };
  const parts = [...new Set(all.map(({ core }) => core.farPart))].sort((p, q) => middleOf(p) - middleOf(q));
  const cables = parts.map((part, c): FanCable => {
    const count = all.filter(({ core }) => core.farPart === part).length;
    return { part, x: (width * (c + 0.5)) / parts.length, width: CLOSE * count + 4 };
  });
  const cores = cables.flatMap(({ part, x: middle }) => {
    const own = all.filter(({ core }) => core.farPart === part);
    return own.map(({ core, x, k, first }, n): FanCore => {
      const to = middle + (n - (own.length - 1) / 2) * CLOSE;
      const top = core.lifted ? start - 4 : 0;
      const say = (value: number) => Math.round(value * 10) / 10;
      const path = `M${say(x)} ${top}V${start}C${say(x)} ${start + BEND * 0.6} ${say(to)} ${start + BEND * 0.4} ${say(to)} ${sheath + 2}`;
      return {
        key: core.key,
        core: core.core,
        lifted: core.lifted,
        path,
        x,
        y: LETTERS * k + 12,
        side: first ? 'left' : 'right',
        far: core.farMark,
      };
    });
  });
  return { width, height: sheath + SHEATH, sheath, cores, cables };
}
