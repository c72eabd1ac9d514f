import type { Frame } from '../circuit/frame.ts';
import type { Moves } from '../circuit/motion.ts';
import type { Config, InputBits, Place } from '../model/system.ts';

/** Settings changed together, then the places the valves pass through one move at a time, the first included. */
export interface Step {
  readonly inputs: InputBits;
  readonly places: readonly Place[];
}

/** The ways from cold to any state: how many switch moves, and which. */
export interface Ways {
  /** The state nearest to cold, by switch moves, of all the lanes given (met or rested in), and the way there. */
  readonly nearest: (lanes: Int32Array) => { config: Config; steps: Step[] } | undefined;
}

/** One switch move costs 16; a second one before the valves have settled costs 17, so waiting is preferred. */
const MOVE = 16;
const AT_ONCE = 17;
const FAR = 0x7fff;

/**
 * Shortest ways from cold. Two kinds of node: *settled* (inputs, resting place) and *set* (inputs just changed, valves
 * still where they were). Buckets by cost, so the search is one pass.
 */
export function findWays({ system, blocks, words }: Frame, moves: Moves): Ways {
  const { places, movers } = system;
  const combinations = 1 << system.inputs.length;
  const size = combinations * places;
  const cost = new Int16Array(2 * size).fill(FAR);
  const from = new Int32Array(2 * size).fill(-1);
  const buckets: number[][] = [];
  const reachNode = (node: number, price: number, before: number) => {
    if (price >= cost[node]!) return;
    cost[node] = price;
    from[node] = before;
    const bucket = buckets[price];
    if (bucket) bucket.push(node);
    else buckets[price] = [node];
  };

  /** Places passed on entering `inputs` at `start`, each with the place before it. */
  const passed = (inputs: InputBits, start: Place): Map<Place, Place> => {
    const lane = 1 << (inputs & 31);
    const trail = new Map<Place, Place>([[start, -1]]);
    for (const place of trail.keys()) {
      const w = place * blocks + (inputs >> 5);
      for (let m = 0; m < movers.length; m++) {
        const { stride } = movers[m]!;
        if (moves.on[m * words + w]! & lane && !trail.has(place + stride)) trail.set(place + stride, place);
        if (moves.back[m * words + w]! & lane && !trail.has(place - stride)) trail.set(place - stride, place);
      }
    }
    return trail;
  };
  const rests = (inputs: InputBits, place: Place) =>
    (moves.rest[place * blocks + (inputs >> 5)]! >>> (inputs & 31)) & 1;

  const order: number[] = [];
  reachNode(size, 0, -1);
  for (let price = 0; price < buckets.length; price++) {
    for (const node of buckets[price] ?? []) {
      if (cost[node] !== price) continue;
      const set = node >= size;
      const key = set ? node - size : node;
      const inputs = Math.floor(key / places);
      const place = key % places;
      if (set) {
        order.push(key);
        for (const to of passed(inputs, place).keys()) {
          if (rests(inputs, to)) reachNode(inputs * places + to, price, node);
        }
      }
      const fee = price + (set ? AT_ONCE : MOVE);
      for (let k = 0; k < system.inputs.length; k++) {
        reachNode(size + (inputs ^ (1 << k)) * places + place, fee, node);
      }
    }
  }

  const wayTo = (key: number, target: Place): Step[] => {
    const steps: Step[] = [];
    let end = target;
    let node = size + key;
    while (node >= 0) {
      const inputs = Math.floor((node - size) / places);
      const trail = passed(inputs, (node - size) % places);
      const line: Place[] = [];
      for (let place = end; place >= 0; place = trail.get(place)!) line.unshift(place);
      steps.unshift({ inputs, places: line });
      // Switches moved together: skip back over the settings between.
      let before = from[node]!;
      while (before >= size) before = from[before]!;
      if (before < 0) break;
      end = before % places;
      node = from[before]!;
    }
    return steps;
  };

  return {
    nearest(lanes) {
      for (const key of order) {
        const inputs = Math.floor(key / places);
        const trail = passed(inputs, key % places);
        for (const place of trail.keys()) {
          if (((lanes[place * blocks + (inputs >> 5)]! >>> (inputs & 31)) & 1) === 0) continue;
          return { config: { inputs, place }, steps: wayTo(key, place) };
        }
      }
      return undefined;
    },
  };
}
