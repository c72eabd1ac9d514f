import type { Frame } from '../circuit/frame.ts';
import type { Moves } from '../circuit/motion.ts';
import type { Config, InputBits, Place } from '../model/system.ts';
import { AT_ONCE, MOVE } from './costs.ts';

/** Settings changed together, then the places the valves pass through one move at a time, the first included. */
export interface Step {
  readonly inputs: InputBits;
  readonly places: readonly Place[];
}

/** A state and the way there from cold; the first step is the cold system itself. */
export interface Way {
  readonly config: Config;
  readonly steps: readonly Step[];
}

/** Places passed, and for each the index of the one before it, -1 for the first. */
interface Trail {
  readonly places: Place[];
  readonly before: number[];
}

const FAR = 0x7fff;

/**
 * For each set of lanes wanted, the state of them that is nearest to cold by switch moves (met or rested in), or
 * undefined when none can be met.
 *
 * A *key* is a place and settings in one number, a bit to a switch. Two kinds of node: *settled* (the key: settings and
 * resting place) and *set* (key plus `size`: settings just changed, valves still where they were). Buckets by cost,
 * so the search is one pass, and it stops when every answer is known.
 */
export function findWays(
  { system, blocks, words }: Frame,
  moves: Moves,
  wanted: readonly Int32Array[],
): (Way | undefined)[] {
  const { movers } = system;
  const switches = system.inputs.length;
  const size = system.places << switches;
  const inputsOf = (key: number): InputBits => key & ((1 << switches) - 1);
  const isIn = (lanes: Int32Array, inputs: InputBits, place: Place) =>
    ((lanes[place * blocks + (inputs >> 5)]! >>> (inputs & 31)) & 1) === 1;

  /** Places passed on setting these inputs with the valves at `start`. */
  const pass = (inputs: InputBits, start: Place): Trail => {
    const places = [start];
    const before = [-1];
    for (let k = 0; k < places.length; k++) {
      const place = places[k]!;
      if (isIn(moves.rest, inputs, place)) continue;
      const w = place * blocks + (inputs >> 5);
      for (let m = 0; m < movers.length; m++) {
        const on = (moves.on[m * words + w]! >>> (inputs & 31)) & 1;
        const back = (moves.back[m * words + w]! >>> (inputs & 31)) & 1;
        const to = place + (on - back) * movers[m]!.stride;
        if (places.includes(to)) continue;
        places.push(to);
        before.push(k);
      }
    }
    return { places, before };
  };

  const cost = new Int16Array(2 * size).fill(FAR);
  const from = new Int32Array(2 * size);
  const buckets: number[][] = [];
  const reachNode = (node: number, price: number, before: number) => {
    if (price >= cost[node]!) return;
    cost[node] = price;
    from[node] = before;
    buckets[price] ??= [];
    buckets[price].push(node);
  };

  const stepsTo = (last: number, target: Place): Step[] => {
    const steps: Step[] = [];
    let end = target;
    for (let node = last; node >= 0; ) {
      const inputs = inputsOf(node - size);
      const { places, before } = pass(inputs, (node - size) >> switches);
      const line: Place[] = [];
      for (let k = places.indexOf(end); k >= 0; k = before[k]!) line.unshift(places[k]!);
      steps.unshift({ inputs, places: line });
      // Switches moved together: skip back over the settings between.
      let settled = from[node]!;
      while (settled >= size) settled = from[settled]!;
      end = settled >> switches;
      node = settled < 0 ? settled : from[settled]!;
    }
    return steps;
  };

  const ways: (Way | undefined)[] = wanted.map(() => undefined);
  let missing = wanted.length;
  if (missing === 0) return ways;
  reachNode(size, 0, -1);
  for (let price = 0; price < buckets.length; price++) {
    for (const node of buckets[price] ?? []) {
      if (cost[node] !== price) continue;
      const set = node >= size;
      const key = set ? node - size : node;
      const inputs = inputsOf(key);
      if (set) {
        const start = key >> switches;
        for (const place of pass(inputs, start).places) {
          if (isIn(moves.rest, inputs, place)) reachNode((place << switches) | inputs, price, node);
          for (let k = 0; k < wanted.length; k++) {
            if (ways[k] || !isIn(wanted[k]!, inputs, place)) continue;
            ways[k] = { config: { inputs, place }, steps: stepsTo(node, place) };
            if (--missing === 0) return ways;
          }
        }
        // Nothing moves: the same state counts as settled, and goes on from there for less.
        if (isIn(moves.rest, inputs, start)) continue;
      }
      const fee = price + (set ? AT_ONCE : MOVE);
      for (let k = 0; k < switches; k++) reachNode(size + (key ^ (1 << k)), fee, node);
    }
  }
  return ways;
}
