import type { Point } from './spots.ts';

/** A lead from the meter to a terminal, as it hangs, and the probe at its end. Lengths in px of the window. */
export interface DrawnLead {
  readonly path: string;
  /** The point on the terminal, where the metal ends, and where the handle ends. */
  readonly tip: Point;
  readonly neck: Point;
  readonly tail: Point;
}

const METAL = 12;
const HANDLE = 28;
/** How far a probe leans from its lead's own way, radians. */
const LEAN = 0.6;
/** How far a lead sags, as a share of its length, and at most. */
const SAG = 0.18;
const MOST_SAG = 70;

/** Draws a lead; red leans one way and black the other (`lean` -1 or 1), so that two on neighbouring terminals stay apart. */
export function drawLead(socket: Point, tip: Point, lean: number): DrawnLead {
  const away = Math.atan2(socket.y - tip.y, socket.x - tip.x);
  const turn = away + lean * LEAN;
  const along = (by: number): Point => ({ x: tip.x + by * Math.cos(turn), y: tip.y + by * Math.sin(turn) });
  const [neck, tail] = [along(METAL), along(METAL + HANDLE)];
  const length = Math.hypot(socket.x - tail.x, socket.y - tail.y);
  const sag = Math.min(MOST_SAG, SAG * length);
  const reach = Math.min(120, length * 0.45);
  const out = { x: tail.x + reach * Math.cos(turn), y: tail.y + reach * Math.sin(turn) + sag };
  const back = { x: socket.x - lean * 12, y: socket.y + (socket.y > tip.y ? -reach / 2 : reach / 2) + sag };
  const say = ({ x, y }: Point) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;
  return { path: `M${say(tail)}C${say(out)} ${say(back)} ${say(socket)}`, tip, neck, tail };
}
