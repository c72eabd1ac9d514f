import type { Load } from '../model/system.ts';
import type { Frame } from './frame.ts';
import type { Nets } from './nets.ts';

/** Per net and word: the lanes joined to line, neutral and earth. Row `net` starts at `net * words`. */
export interface Sweep {
  readonly line: Int32Array;
  readonly neutral: Int32Array;
  readonly earth: Int32Array;
  /** The same for the line and the neutral of each supply; with one supply, they are the arrays above. */
  readonly lines: readonly Int32Array[];
  readonly neutrals: readonly Int32Array[];
  /** Per load with a loop of its own: the lanes joined to its first end. */
  readonly loops: ReadonlyMap<Load, Int32Array>;
}

/** Room for the answers of one system, used again for every wiring judged on it. */
export interface SweepRoom extends Sweep {
  /** Contacts that join two different nets: their nets and their row in the frame. */
  readonly ends: Int16Array;
}

export function makeSweepRoom({ system, words }: Frame): SweepRoom {
  const rows = () => new Int32Array(system.nodes.length * words);
  const alone = system.supplies.length === 1;
  const [line, neutral] = [rows(), rows()];
  return {
    line,
    neutral,
    earth: rows(),
    lines: alone ? [line] : system.supplies.map(rows),
    neutrals: alone ? [neutral] : system.supplies.map(rows),
    loops: new Map(system.loads.filter(({ spec }) => spec.ownLoop).map((load) => [load, rows()])),
    ends: new Int16Array(system.contacts.length * 3),
  };
}

/** Spreads what is joined to one source over all contacts, every state at once, until nothing changes. */
function spread(
  lanes: Int32Array,
  sources: readonly number[],
  frame: Frame,
  nets: Nets,
  ends: Int16Array,
  contacts: number,
): void {
  const { words, closed } = frame;
  lanes.fill(0, 0, nets.count * words);
  let touched = false;
  for (const source of sources) {
    const net = nets.of[source]!;
    lanes.fill(frame.used, net * words, (net + 1) * words);
    for (let k = 0; k < contacts; k += 3) touched ||= ends[k] === net || ends[k + 1] === net;
  }
  // A source that no contact touches reaches only its own net.
  if (!touched) return;
  for (let w = 0; w < words; w++) {
    for (let changed = 1; changed !== 0; ) {
      changed = 0;
      for (let k = 0; k < contacts; k += 3) {
        const ia = ends[k]! * words + w;
        const ib = ends[k + 1]! * words + w;
        const a = lanes[ia]!;
        const b = lanes[ib]!;
        const moved = (a ^ b) & closed[ends[k + 2]! * words + w]!;
        if (moved === 0) continue;
        lanes[ia] = a | moved;
        lanes[ib] = b | moved;
        changed = 1;
      }
    }
  }
}

/** What is joined to line, neutral and earth in every state at once. The answer lives in `room` until its next use. */
export function sweep(frame: Frame, nets: Nets, room: SweepRoom): Sweep {
  const { contacts, supplies } = frame.system;
  const { of } = nets;
  let k = 0;
  for (let c = 0; c < contacts.length; c++) {
    const a = of[contacts[c]!.a]!;
    const b = of[contacts[c]!.b]!;
    if (a === b) continue;
    room.ends[k++] = a;
    room.ends[k++] = b;
    room.ends[k++] = c;
  }
  const from = (lanes: Int32Array, sources: readonly number[]) =>
    spread(lanes, sources, frame, nets, room.ends, k);
  from(
    room.line,
    supplies.map(({ line }) => line),
  );
  from(
    room.neutral,
    supplies.map(({ neutral }) => neutral),
  );
  from(
    room.earth,
    supplies.map(({ earth }) => earth),
  );
  if (supplies.length > 1) {
    supplies.forEach(({ line, neutral }, s) => {
      from(room.lines[s]!, [line]);
      from(room.neutrals[s]!, [neutral]);
    });
  }
  for (const [load, lanes] of room.loops) from(lanes, [load.a]);
  return room;
}
