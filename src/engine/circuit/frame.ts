import type { Settings } from '../model/system.ts';
import { holds, partState, positionIndex, type System } from '../model/system.ts';

/**
 * What can be worked out once for a system, before any wire is laid. A *lane* is one bit of a word: 32
 * combinations of inputs side by side. Word `place * blocks + block` holds inputs `32 * block … + 31` at that
 * place; with fewer than 32 combinations the lanes above are off in `used`.
 */
export interface Frame {
  readonly system: System;
  readonly blocks: number;
  readonly words: number;
  /** Lanes that stand for a combination of inputs. */
  readonly used: number;
  /** Per contact and word: the lanes in which it is closed, contact by contact. */
  readonly closed: Int32Array;
  /** Per mover and place: the position index. */
  readonly positions: Uint8Array;
  /** Lanes per block in which the supply is on. */
  readonly powered: Int32Array;
}

/** More words than this would not fit a page's memory or patience: the exploration must be reduced first. */
const MOST_WORDS = 1 << 20;

export const laneMask = (count: number): number => (count >= 32 ? -1 : (1 << count) - 1);

/** Lanes, per block of 32 input combinations, in which a condition on the inputs holds. */
export function lanesWhere(system: System, condition: (inputs: number) => boolean): Int32Array {
  const combinations = 1 << system.inputs.length;
  const lanes = new Int32Array(Math.max(1, combinations >> 5));
  for (let inputs = 0; inputs < combinations; inputs++) {
    if (condition(inputs)) lanes[inputs >> 5]! |= 1 << (inputs & 31);
  }
  return lanes;
}

/** Lanes in which all these settings hold. */
export const lanesOf = (system: System, settings: Settings): Int32Array =>
  lanesWhere(system, (inputs) => holds(system, inputs, settings));

/** Prepares a system for the fast evaluator. Throws when it has too many configurations for exploring them all. */
export function makeFrame(system: System): Frame {
  const combinations = 1 << system.inputs.length;
  const blocks = Math.max(1, combinations >> 5);
  const words = blocks * system.places;
  if (words > MOST_WORDS) throw new Error(`${words} words of states are too many to explore one by one`);

  const closed = new Int32Array(system.contacts.length * words);
  system.contacts.forEach(({ part, spec }, c) => {
    for (let place = 0; place < system.places; place++) {
      const lanes = lanesWhere(system, (inputs) =>
        spec.closed(partState(system, system.parts[part]!, { inputs, place })),
      );
      closed.set(lanes, c * words + place * blocks);
    }
  });

  const positions = new Uint8Array(system.movers.length * system.places);
  system.movers.forEach((mover, m) => {
    for (let place = 0; place < system.places; place++) {
      positions[m * system.places + place] = positionIndex(mover, place);
    }
  });
  const supply = system.supply.input;
  return {
    system,
    blocks,
    words,
    used: laneMask(combinations),
    closed,
    positions,
    powered: lanesWhere(system, (inputs) => supply < 0 || ((inputs >> supply) & 1) === 1),
  };
}
