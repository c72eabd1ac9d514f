import { makeSweepRoom, type SweepRoom } from '../circuit/fast.ts';
import type { Frame } from '../circuit/frame.ts';
import type { Nets } from '../circuit/nets.ts';
import { type InputBits, positionIndex, type System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';

/** Joints that failures may add to the contacts of a system at one time. */
const MOST_ADDED = 8;

/**
 * A system made ready for following many candidates: here a lane is a *place* of the valves, 32 places to a word, and
 * the inputs are fixed. So every order of movement from anywhere comes out of one sweep.
 */
export interface Bench {
  readonly system: System;
  readonly words: number;
  /** Per mover and position: the lanes in which it stands there. */
  readonly standing: readonly (readonly Int32Array[])[];
  readonly room: SweepRoom;
  /** Room for the circuit as drawn, which failures that leave the circuit alone share. */
  readonly drawn: SweepRoom;
  /** What stands in `drawn` now. */
  swept: { readonly inputs: InputBits; readonly wires: readonly Wire[]; readonly nets: Nets } | undefined;
  /** Contacts of the healthy system under the inputs asked last. */
  closed: { readonly inputs: InputBits; readonly rows: Int32Array } | undefined;
}

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
  const room = () => makeSweepRoom(laneFrame(roomy, words, new Int32Array(0)));
  return { system, words, standing, room: room(), drawn: room(), swept: undefined, closed: undefined };
}

/** Rows of closed contacts, one after the other: the lanes (places) in which each is closed under these inputs. */
function healthyRows(bench: Bench, inputs: InputBits): Int32Array {
  if (bench.closed?.inputs === inputs) return bench.closed.rows;
  const { system, words, standing } = bench;
  const rows = new Int32Array((system.contacts.length + MOST_ADDED) * words);
  const settings = system.parts.map(({ slots }) =>
    Object.fromEntries(
      Object.entries(slots).map(([slot, k]) => [slot, system.inputs[k]!.settings[(inputs >> k) & 1]!]),
    ),
  );
  system.contacts.forEach(({ part, spec }, c) => {
    const setting = settings[part]!;
    const { mover } = system.parts[part]!;
    if (mover < 0) {
      if (spec.closed({ setting, position: '' })) rows.fill(-1, c * words, (c + 1) * words);
      return;
    }
    system.movers[mover]!.positions.forEach((position, p) => {
      if (!spec.closed({ setting, position })) return;
      const lanes = standing[mover]![p]!;
      for (let w = 0; w < words; w++) rows[c * words + w]! |= lanes[w]!;
    });
  });
  bench.closed = { inputs, rows };
  return rows;
}

/** The frame of a failed system under fixed inputs, for `sweep`: lanes are places, rounded up to whole words. */
export function frameOf(bench: Bench, failed: System, inputs: InputBits): Frame {
  const { system, words } = bench;
  const healthy = healthyRows(bench, inputs);
  let closed = healthy;
  if (failed.contacts !== system.contacts) {
    if (failed.contacts.length > system.contacts.length + MOST_ADDED) throw new RangeError('too many faults');
    closed = healthy.slice();
    failed.contacts.forEach((contact, c) => {
      if (contact === system.contacts[c]) return;
      // A failed contact stays as it is whatever the state.
      const stays = contact.spec.closed({ setting: {}, position: '' }) ? -1 : 0;
      closed.fill(stays, c * words, (c + 1) * words);
    });
  }
  return laneFrame(failed, words, closed);
}

/** A frame whose lanes are places. What judging needs besides, which asks of many inputs at once, stays empty. */
const laneFrame = (system: System, words: number, closed: Int32Array): Frame => ({
  system,
  combinations: [],
  blocks: 1,
  words,
  used: -1,
  closed,
  positions: new Uint8Array(0),
  powered: new Int32Array(0),
  work: [],
});
