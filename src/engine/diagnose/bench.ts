import { makeSweepRoom, type SweepRoom } from '../circuit/fast.ts';
import type { Frame } from '../circuit/frame.ts';
import type { Nets } from '../circuit/nets.ts';
import { type InputBits, positionIndex, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** Joints that failures may add to the contacts of a system at one time. */
const MOST_ADDED = 8;

/**
 * A system made ready for following many candidates: here a lane is a *place* of the valves, 32 places to a word, and
 * the inputs are fixed. So every order of movement from anywhere comes out of a few words, and only those are swept that
 * a candidate's valves pass through.
 */
export interface Bench {
  readonly system: System;
  readonly words: number;
  /** Per mover and position: the lanes in which it stands there. */
  readonly standing: readonly (readonly Int32Array[])[];
  /** Room for sweeping one word. */
  readonly room: SweepRoom;
  /** One word of closed contacts, where it is put together. */
  readonly row: Int32Array;
  /** Room for following a candidate: its circuit, the ways of its movers with the fuse whole and blown, the standings met. */
  readonly own: Lanes;
  readonly whole: Ways;
  readonly blown: Ways;
  readonly met: Uint8Array;
  /** The circuit as drawn, swept as far as anybody asked: failures that leave the circuit alone share it. */
  drawn:
    | {
        readonly inputs: InputBits;
        readonly wires: readonly Wire[];
        readonly nets: Nets;
        readonly lanes: Lanes;
      }
    | undefined;
  /** Contacts of the healthy system under the inputs asked last. */
  closed: { readonly inputs: InputBits; readonly rows: Int32Array } | undefined;
}

/** What a circuit does in each word, worked out when it is first asked for. */
export interface Lanes {
  /** Per word and load: the lanes in which it works, dead or not, the fuse being whole. */
  readonly works: Int32Array;
  /** Per word: the lanes in which line is joined to neutral or earth with no load between. */
  readonly shorts: Int32Array;
  /** Per word: 1 once it is worked out. */
  readonly known: Uint8Array;
}

/** Per word and mover: the lanes in which it goes on, and back. A latched lever lifts a valve off its seat and keeps it there. */
export interface Ways {
  readonly on: Int32Array;
  readonly back: Int32Array;
  /** Per word: 1 once it is worked out. */
  readonly known: Uint8Array;
}

const noWays = (system: System, words: number): Ways => ({
  on: new Int32Array(system.movers.length * words),
  back: new Int32Array(system.movers.length * words),
  known: new Uint8Array(words),
});

export const noLanes = (system: System, words: number): Lanes => ({
  works: new Int32Array(system.loads.length * words),
  shorts: new Int32Array(words),
  known: new Uint8Array(words),
});

/** Prepares a system; costs a millisecond or so on the largest. */
export function makeBench(system: System): Bench {
  const words = Math.ceil(system.places / 32);
  const standing = system.movers.map((mover) =>
    mover.positions.map((_, position) => {
      const lanes = new Int32Array(words);
      for (let place = 0; place < system.places; place++) {
        if (positionIndex(mover, place) === position) lanes[place >> 5]! |= 1 << (place & 31);
      }
      return lanes;
    }),
  );
  const roomy = { ...system, contacts: [...system.contacts, ...system.contacts.slice(0, MOST_ADDED)] };
  const row = new Int32Array(roomy.contacts.length);
  const room = makeSweepRoom(wordFrame(roomy, row));
  return {
    system,
    words,
    standing,
    room,
    row,
    own: noLanes(system, words),
    whole: noWays(system, words),
    blown: noWays(system, words),
    met: new Uint8Array(2 * system.places),
    drawn: undefined,
    closed: undefined,
  };
}

/** Per word and contact: the lanes (places) in which it is closed under these inputs. */
function healthyRows(bench: Bench, inputs: InputBits): Int32Array {
  if (bench.closed?.inputs === inputs) return bench.closed.rows;
  const { system, words, standing } = bench;
  const count = system.contacts.length;
  const rows = new Int32Array(count * words);
  const settings = system.parts.map(({ slots }) =>
    Object.fromEntries(
      Object.entries(slots).map(([slot, k]) => [slot, system.inputs[k]!.settings[(inputs >> k) & 1]!]),
    ),
  );
  system.contacts.forEach(({ part, spec }, c) => {
    const setting = settings[part]!;
    const { mover } = system.parts[part]!;
    const positions = mover < 0 ? [''] : system.movers[mover]!.positions;
    positions.forEach((position, p) => {
      if (!spec.closed({ setting, position })) return;
      for (let w = 0; w < words; w++) rows[w * count + c]! |= mover < 0 ? -1 : standing[mover]![p]![w]!;
    });
  });
  bench.closed = { inputs, rows };
  return rows;
}

/** A contact that a failure keeps as it is, by number: -1 closed, 0 open, in every lane. */
export type Stay = readonly [contact: number, lanes: number];

/** The contacts that failures keep as they are. Throws a RangeError for more joints than there is room for. */
export function staysOf({ system }: Bench, failed: System): Stay[] {
  if (failed.contacts === system.contacts) return [];
  if (failed.contacts.length > system.contacts.length + MOST_ADDED) throw new RangeError('too many faults');
  return failed.contacts.flatMap((contact, c): Stay[] => {
    if (contact === system.contacts[c]) return [];
    return [[c, contact.spec.closed({ setting: {}, position: '' }) ? -1 : 0]];
  });
}

/** Per contact: the lanes of one word in which it is closed. The answer lives in the bench until its next use. */
export function closedRow(bench: Bench, inputs: InputBits, stays: readonly Stay[], w: number): Int32Array {
  const count = bench.system.contacts.length;
  bench.row.set(healthyRows(bench, inputs).subarray(w * count, (w + 1) * count));
  for (const [c, lanes] of stays) bench.row[c] = lanes;
  return bench.row;
}

/** A frame of one word whose lanes are places. What judging needs besides, which asks of many inputs at once, stays empty. */
export const wordFrame = (system: System, closed: Int32Array): Frame => ({
  system,
  combinations: [],
  blocks: 1,
  words: 1,
  used: -1,
  closed,
  positions: new Uint8Array(0),
  powered: new Int32Array(0),
  work: [],
});
