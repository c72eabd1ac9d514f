import type { Frame } from './frame.ts';
import type { Nets } from './nets.ts';

/** Per net and word: the lanes joined to line, neutral and earth. Row `net` starts at `net * words`. */
export interface Sweep {
  readonly line: Int32Array;
  readonly neutral: Int32Array;
  readonly earth: Int32Array;
}

/** Room for the answers of one system, used again for every wiring judged on it. */
export interface SweepRoom extends Sweep {
  /** Contacts that join two different nets: their nets and their row in the frame. */
  readonly ends: Int16Array;
}

export function makeSweepRoom({ system, words }: Frame): SweepRoom {
  const size = system.nodes.length * words;
  return {
    line: new Int32Array(size),
    neutral: new Int32Array(size),
    earth: new Int32Array(size),
    ends: new Int16Array(system.contacts.length * 3),
  };
}

/** Spreads what is joined to one pole over all contacts, every state at once, until nothing changes. */
function spread(
  lanes: Int32Array,
  pole: number,
  frame: Frame,
  nets: Nets,
  ends: Int16Array,
  contacts: number,
): void {
  const { words, closed } = frame;
  lanes.fill(0, 0, nets.count * words);
  lanes.fill(frame.used, pole * words, (pole + 1) * words);
  let touched = false;
  for (let k = 0; k < contacts; k += 3) touched ||= ends[k] === pole || ends[k + 1] === pole;
  // A pole that no contact touches reaches only its own net.
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
  const { contacts, supply } = frame.system;
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
  spread(room.line, of[supply.line]!, frame, nets, room.ends, k);
  spread(room.neutral, of[supply.neutral]!, frame, nets, room.ends, k);
  spread(room.earth, of[supply.earth]!, frame, nets, room.ends, k);
  return room;
}
