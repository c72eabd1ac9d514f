import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawCircuit } from '../../../src/engine/circuit/symbolic.ts';
import { makeSymbols } from '../../../src/engine/circuit/symbols.ts';
import { findNearest } from '../../../src/engine/explore/nearest.ts';
import { exploreSymbolic } from '../../../src/engine/explore/symbolic.ts';
import { findWays, type Way } from '../../../src/engine/explore/ways.ts';
import { countLanes, makeJudge } from '../../../src/engine/grade/judge.ts';
import type { Found } from '../../../src/engine/grade/verdict.ts';
import type { Config, System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { applyMistake } from '../../../src/files/mistake.ts';
import { oneTwoPort, oneTwoPortRight } from '../../fixtures/one-two-port.ts';
import { twoSupplies, twoSuppliesRight } from '../../fixtures/two-supplies.ts';
import { plainSystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { walkProblems } from '../support/replay.ts';
import { zonesRight, zonesSystem, zonesWrong } from '../support/zones.ts';

/** How many bits are set. */
const ones = (bits: number): number => [...bits.toString(2)].filter((digit) => digit === '1').length;

/** Cost of a way as the search counts it: 16 to a step, 17 to each further switch moved in the same step. */
const cost = ({ steps }: Way): number =>
  steps.slice(1).reduce((sum, { inputs }, k) => sum + 17 * ones(inputs ^ must(steps[k]).inputs) - 1, 0);

/** Both explorations of a system, to be held against each other on wirings. */
function twoWays(of: System) {
  const judge = makeJudge(of);
  const { frame } = judge;
  const symbols = makeSymbols(of);
  const { sets, has, count } = symbols;
  sets.keep();
  const configs: Config[] = Array.from({ length: of.places << of.inputs.length }, (_, key) => ({
    inputs: Math.floor(key / of.places),
    place: key % of.places,
  }));
  const laneIn = (lanes: Int32Array, { inputs, place }: Config) =>
    ((must(lanes[place * frame.blocks + (inputs >> 5)]) >>> (inputs & 31)) & 1) === 1;
  /** The set that holds what these lanes hold. */
  const drawn = (lanes: Int32Array): number =>
    configs
      .filter((config) => laneIn(lanes, config))
      .reduce((set, config) => sets.or(set, one(config)), sets.none);
  const one = ({ inputs, place }: Config): number => {
    const set = of.inputs.map((_, k) => symbols.isSet(k, ((inputs >> k) & 1) === 1 ? 1 : 0));
    const stood = of.movers.map(({ stride, positions }, m) =>
      symbols.stands(m, Math.floor(place / stride) % positions.length),
    );
    return [...set, ...stood].reduce(sets.and, sets.all);
  };
  /** Fails unless the set and the lanes hold the same states. */
  const same = (what: string, set: number, lanes: Int32Array) => {
    expect([what, count(set)]).toEqual([what, countLanes(lanes)]);
    const differ = configs.find((config) => has(set, config) !== laneIn(lanes, config));
    expect([what, differ]).toEqual([what, undefined]);
  };
  return { judge, frame, symbols, drawn, one, same };
}

/** Fails unless diagrams and full exploration meet, judge and call hunting the same states, by ways that cost the same. */
function compare(of: System) {
  const { judge, frame, symbols, drawn, same } = twoWays(of);
  return (wires: readonly Wire[]) => {
    symbols.sets.reset();
    const { reach, moves, broken } = judge.sweepStates(wires);
    const circuit = drawCircuit(symbols, wires);
    const { met, judged, hunting } = exploreSymbolic(symbols, circuit.moves);
    same('met', met, reach.met);
    same('judged', judged, reach.judged);
    same('hunting', hunting, reach.hunting);
    same('at rest', circuit.moves.rest, moves.rest);

    const failing = broken.filter((lanes) => countLanes(lanes) > 0);
    const ways = findWays(frame, moves, failing);
    const nearest = findNearest(symbols, circuit.moves, failing.map(drawn));
    nearest.forEach((found, k) => {
      const way = must(found, 'a way');
      expect(cost(way)).toBe(cost(must(ways[k])));
      const { config, steps } = way;
      expect(symbols.has(drawn(must(failing[k])), config)).toBe(true);
      expect(walkProblems(of, wires, { config, way: steps } as unknown as Found)).toEqual([]);
    });
  };
}

const small = [
  ...plainSystems(1 << 13).map(([id, { system, references, mistakes }]) => ({
    id,
    system,
    right: references.map(({ wires }) => wires),
    wrong: mistakes.map((mistake) => applyMistake(references, mistake)),
  })),
  { id: 'two-supplies', system: twoSupplies, right: [twoSuppliesRight], wrong: [] },
  { id: 'one-two-port', system: oneTwoPort, right: [oneTwoPortRight], wrong: [] },
  ...[1, 2].map((zones) => ({
    id: `zones-${zones}`,
    system: zonesSystem(zones),
    right: [zonesRight(zones)],
    wrong: zonesWrong(zones).map(({ wires }) => wires),
  })),
];

describe('diagrams find what full exploration finds, state by state', { timeout: 120_000 }, () => {
  test.each(small)('$id: on every right wiring and every classic mistake', ({ system, right, wrong }) => {
    const check = compare(system);
    for (const wires of [...right, ...wrong]) check(wires);
  });

  test.each(small)('$id: on random and damaged wirings', ({ system, right }) => {
    const numRuns = system.places << system.inputs.length > 1000 ? 12 : 40;
    fc.assert(fc.property(wirings(system, right), compare(system)), { seed, numRuns });
  });

  test('hot water and three zones: the same on the right wiring and two wrong ones, in all 331 776 configurations', () => {
    const { judge, symbols, same } = twoWays(zonesSystem(3));
    for (const { wires } of [{ wires: zonesRight(3) }, ...zonesWrong(3).slice(0, 2)]) {
      symbols.sets.reset();
      const { reach } = judge.sweepStates(wires);
      const { met, judged, hunting } = exploreSymbolic(symbols, drawCircuit(symbols, wires).moves);
      same('met', met, reach.met);
      same('judged', judged, reach.judged);
      same('hunting', hunting, reach.hunting);
    }
  });

  test('the nearest way is as short as can be to every single state that can be met', () => {
    const { system, right, wrong } = must(small.find(({ id }) => id === 'unvented-three-port'));
    const { judge, frame, symbols, one } = twoWays(system);
    for (const wires of [...right.slice(0, 1), ...wrong.slice(0, 6)]) {
      symbols.sets.reset();
      const { reach, moves } = judge.sweepStates(wires);
      const lanes: Int32Array[] = [];
      const single: number[] = [];
      for (let w = 0; w < frame.words; w++) {
        for (let bit = 0; bit < 32; bit++) {
          if (((must(reach.met[w]) >>> bit) & 1) === 0) continue;
          lanes.push(new Int32Array(frame.words).fill(1 << bit, w, w + 1));
          single.push(one({ inputs: (w % frame.blocks) * 32 + bit, place: Math.floor(w / frame.blocks) }));
        }
      }
      const circuit = drawCircuit(symbols, wires);
      const nearest = findNearest(symbols, circuit.moves, single).map((way) => cost(must(way)));
      expect(nearest).toEqual(findWays(frame, moves, lanes).map((way) => cost(must(way))));
    }
  });

  test('a set of no state has no way, and the cold state has one without a switch move', () => {
    const { symbols, one } = twoWays(oneTwoPort);
    const { moves } = drawCircuit(symbols, oneTwoPortRight);
    const cold = { inputs: 0, place: 0 };
    expect(findNearest(symbols, moves, [symbols.sets.none, one(cold)])).toEqual([
      undefined,
      { config: cold, steps: [{ inputs: 0, places: [0] }] },
    ]);
  });
});

describe('six zones with hot water and frost protection', () => {
  const symbols = makeSymbols(zonesSystem(6));
  symbols.sets.keep();
  const explored = (wires: readonly Wire[]) => {
    symbols.sets.reset();
    const { moves, works } = drawCircuit(symbols, wires);
    return { ...exploreSymbolic(symbols, moves), moves, works };
  };

  test('wired right, each of the 2¹⁸ settings brings its seven valves to one place, and every state is passed', () => {
    const { met, judged, hunting } = explored(zonesRight(6));
    // Seven two-ports of three positions, each driven by its own call alone: all orders of movement pass everywhere.
    expect(symbols.count(met)).toBe(2 ** 18 * 3 ** 7);
    expect(symbols.count(judged)).toBe(2 ** 18);
    expect(hunting).toBe(symbols.sets.none);
  });

  test('with every end switch fed from its own call, another call holds a valve open that nobody calls', () => {
    const { system, sets, isSet, stands } = symbols;
    const satisfied = isSet(
      system.inputs.findIndex(({ id }) => id === 'room-4'),
      0,
    );
    const open = stands(must(system.parts.find(({ id }) => id === 'valve-4')).mover, 2);
    sets.keep();
    const held = (wires: readonly Wire[]) => {
      const { judged, moves } = explored(wires);
      const states = sets.and(judged, sets.and(satisfied, open));
      return { states, way: findNearest(symbols, moves, [states])[0] };
    };
    expect(held(zonesRight(6)).states).toBe(sets.none);
    const wrong = must(zonesWrong(6).find(({ id }) => id.startsWith('every end switch'))).wires;
    const { states, way } = held(wrong);
    const { config, steps } = must(way);
    expect(symbols.has(states, config)).toBe(true);
    expect(walkProblems(system, wrong, { config, way: steps } as unknown as Found)).toEqual([]);
    // The supply, both switches of this call and both of another, and then this room is warm: six to move.
    expect(steps.slice(1).reduce((sum, { inputs }, k) => sum + ones(inputs ^ must(steps[k]).inputs), 0)).toBe(
      6,
    );
  });
});
