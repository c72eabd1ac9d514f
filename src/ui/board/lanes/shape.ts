/** A lead of a part: `x` is its centre, px. */
export interface Pin {
  id: string;
  x: number;
}

/** A terminal box on the strip: `x` is its centre, px. */
export interface StripTerminal {
  id: string;
  x: number;
  width: number;
}

/** Where everything stands before a wire is drawn. All lengths in px. */
export interface BoardShape {
  upper: Pin[];
  lower: Pin[];
  strip: StripTerminal[];
  stripHeight: number;
  /** Outer limits: no wire goes beyond them. */
  left: number;
  right: number;
  /** Wanted pitch between lanes. */
  lane: number;
  /** Wanted spacing between wires that enter one terminal. */
  slot: number;
  minUpper: number;
  minLower: number;
  maxUpper?: number;
  maxLower?: number;
  /** How far the strip's body stands out beyond its end boxes (6 if not given). */
  frame?: number;
}

/** A wire between two leads or terminals, named by their ids. */
export interface Wire {
  key: string;
  ends: [string, string];
}

export type Point = [number, number];

/** A wire as drawn: right-angled, from `ends[0]` to `ends[1]`, y = 0 at the upper leads. */
export interface RoutedWire {
  key: string;
  points: Point[];
}

/** Two wires crossing: `over` runs through, `under` shows a gap. */
export interface Crossing {
  x: number;
  y: number;
  over: string;
  under: string;
}

export interface Routing {
  /** Sorted by key. */
  wires: RoutedWire[];
  upperHeight: number;
  lowerHeight: number;
  crossings: Crossing[];
}

/** Wires of different kinds never run side by side closer than this, px. */
export const CLEARANCE = 5;
/** Two runs in one lane keep this far apart end to end, px. */
export const END_GAP = 10;
