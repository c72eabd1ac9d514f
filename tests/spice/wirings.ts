import type { Wire } from '../../src/engine/model/wiring.ts';
import { reference, rewire } from '../engine/meter/system.ts';

export interface Named {
  readonly title: string;
  readonly kind: 'right' | 'wrong' | 'broken';
  readonly wires: readonly Wire[];
}

/** Mistakes that learners and installers make (common practice). */
const wrong: Named[] = Object.entries({
  'white and grey swapped': rewire(['three-port/white', 'three-port/grey'], {
    'strip/3': 'three-port/grey',
    'strip/5': 'three-port/white',
  }),
  'grey and orange swapped on the three-port': rewire(['three-port/grey', 'three-port/orange'], {
    'strip/5': 'three-port/orange',
    'strip/8': 'three-port/grey',
  }),
  'end switch fed from the call': rewire(['two-port/grey'], { 'strip/7': 'two-port/grey' }),
  'old link from the cylinder call to the boiler left in': rewire([], { 'strip/6': 'strip/8' }),
  'no neutral at the three-port': rewire(['three-port/blue']),
  'no neutral at the two-port': rewire(['two-port/blue']),
  'neutrals of both valves joined to each other alone': rewire(['three-port/blue', 'two-port/blue'], {
    'three-port/blue': 'two-port/blue',
  }),
  'no neutral at the strip': rewire(['spur/N']),
  'cut-out bypassed': rewire([], { 'strip/6': 'strip/7' }),
  'line and neutral swapped at the spur': rewire(['spur/L', 'spur/N'], {
    'strip/1': 'spur/N',
    'strip/11': 'spur/L',
  }),
  'grey of the three-port landed on neutral': rewire(['three-port/grey'], { 'strip/11': 'three-port/grey' }),
  'orange and blue swapped on the three-port': rewire(['three-port/orange', 'three-port/blue'], {
    'strip/8': 'three-port/blue',
    'strip/11': 'three-port/orange',
  }),
}).map(([title, wires]) => ({ title, kind: 'wrong', wires }));

/** Numbers from 0 to 1, the same for the same seed (mulberry32, public domain, from memory). */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The reference with one to four wires pulled out by a seeded hand. */
const broken: Named[] = [1, 2, 3, 4, 5, 6].map((seed) => {
  const random = randomFrom(seed);
  const wires = [...reference];
  const gone = Array.from({ length: 1 + Math.floor(random() * 4) }, () =>
    wires.splice(Math.floor(random() * wires.length), 1),
  );
  return {
    title: `without ${gone
      .flat()
      .map((ends) => ends.join('–'))
      .join(', ')}`,
    kind: 'broken',
    wires,
  };
});

export const wirings: readonly Named[] = [
  { title: 'reference wiring', kind: 'right', wires: reference },
  ...wrong,
  ...broken,
];
