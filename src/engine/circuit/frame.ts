import {
  holds,
  type InputBits,
  isOn,
  type Load,
  partState,
  positionIndex,
  type Settings,
  type System,
} from '../model/system.ts';
/**
 * What can be worked out once for a system, before any wire is laid. A *lane* is one bit of a word: 32
 * combinations of inputs side by side. Word `place * blocks + block` holds inputs `32 * block … + 31` at that
 * place; with fewer than 32 combinations the lanes above are off in `used`.
 */
export interface Frame {
  readonly system: System;
  /** The combination of inputs that each lane stands for. */
  readonly combinations: readonly InputBits[];
  readonly blocks: number;
  readonly words: number;
  /** Lanes that stand for a combination of inputs. */
  readonly used: number;
  /** Per contact and word: the lanes in which it is closed, contact by contact. */
  readonly closed: Int32Array;
  /** Per mover and place: the position index. */
  readonly positions: Uint8Array;
  /** Lanes per block in which the supply of the controls is on. */
  readonly powered: Int32Array;
  /** Per part that does work: what it needs for it. */
  readonly work: readonly Work[];
}

/** What a part does, and the loads it needs: one of each group. */
export interface Work {
  readonly part: number;
  readonly does: 'fires' | 'pumps' | 'heats';
  readonly needs: readonly (readonly Load[])[];
}

/** More words than this would not fit a page's memory or patience: the exploration must be reduced first. */
const MOST_WORDS = 1 << 20;

export const laneMask = (count: number): number => (count >= 32 ? -1 : (1 << count) - 1);

/** Lanes, per block of 32 combinations, in which a condition on the inputs holds. */
export function lanesWhere(
  combinations: readonly InputBits[],
  condition: (inputs: InputBits) => boolean,
): Int32Array {
  const lanes = new Int32Array(Math.ceil(combinations.length / 32));
  combinations.forEach((inputs, lane) => {
    if (condition(inputs)) lanes[lane >> 5]! |= 1 << (lane & 31);
  });
  return lanes;
}

/** Lanes in which all these settings hold. */
export const lanesOf = ({ system, combinations }: Frame, settings: Settings): Int32Array =>
  lanesWhere(combinations, (inputs) => holds(system, inputs, settings));

/**
 * Prepares a system for the fast evaluator, for all combinations of inputs or for those in which `fixed` holds.
 * Throws when it has too many configurations for exploring them all.
 */
export function makeFrame(system: System, fixed: Settings = {}): Frame {
  const combinations = Array.from({ length: 1 << system.inputs.length }, (_, inputs) => inputs).filter(
    (inputs) => holds(system, inputs, fixed),
  );
  const blocks = Math.ceil(combinations.length / 32);
  const words = blocks * system.places;
  if (words > MOST_WORDS) throw new Error(`${words} words of states are too many to explore one by one`);

  const closed = new Int32Array(system.contacts.length * words);
  system.contacts.forEach(({ part, spec }, c) => {
    for (let place = 0; place < system.places; place++) {
      const lanes = lanesWhere(combinations, (inputs) =>
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
  return {
    system,
    combinations,
    blocks,
    words,
    used: laneMask(combinations.length),
    closed,
    positions,
    powered: lanesWhere(combinations, (inputs) => isOn(system.supply, inputs)),
    work: workOf(system),
  };
}

/** What each part that does work needs for it. */
export const workOf = ({ parts, loads }: System): Work[] =>
  parts.flatMap(({ kind: { work } }, part) => {
    if (!work) return [];
    const needs = work.needs.map((need) => {
      const names = typeof need === 'string' ? [need] : need;
      return loads.filter((load) => load.part === part && names.includes(load.spec.id));
    });
    return [{ part, does: work.does, needs }];
  });
