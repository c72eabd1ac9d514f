import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orderQuestions } from '../../../src/engine/circuit/order.ts';
import { directions, evaluate } from '../../../src/engine/circuit/plain.ts';
import { drawCircuit } from '../../../src/engine/circuit/symbolic.ts';
import { makeSymbols } from '../../../src/engine/circuit/symbols.ts';
import type { Config, System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { oneTwoPort, oneTwoPortRight } from '../../fixtures/one-two-port.ts';
import { twoSupplies, twoSuppliesRight } from '../../fixtures/two-supplies.ts';
import { references, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { zonesRight, zonesSystem } from '../support/zones.ts';

/** Fails at the first state in which diagrams and plain evaluator say different things of any node, load or valve. */
function compare(of: System) {
  const symbols = makeSymbols(of);
  const { sets, has } = symbols;
  sets.keep();
  return (wires: readonly Wire[]): number => {
    sets.reset();
    const { line, neutral, earth, lineOf, neutralOf, works, moves } = drawCircuit(symbols, wires);
    let states = 0;
    for (let place = 0; place < of.places; place++) {
      for (let inputs = 0; inputs < 1 << of.inputs.length; inputs++) {
        const config: Config = { inputs, place };
        const live = evaluate(of, wires, config);
        const agree = (what: string, plain: boolean | undefined, set: number) => {
          if (plain === has(set, config)) return;
          throw new Error(`${what} at inputs ${inputs}, place ${place}: ${JSON.stringify(wires)}`);
        };
        of.nodes.forEach((name, node) => {
          agree(`line of ${name}`, live.line[node], line(node));
          agree(`neutral of ${name}`, live.neutral[node], neutral(node));
          agree(`earth of ${name}`, live.earth[node], earth(node));
          of.supplies.forEach((_, s) => {
            agree(`line ${s} of ${name}`, live.lines[s]?.[node], lineOf(s, node));
            agree(`neutral ${s} of ${name}`, live.neutrals[s]?.[node], neutralOf(s, node));
          });
        });
        of.loads.forEach((load, l) => {
          agree(load.spec.id, live.works[l], works(load));
        });
        const steps = directions(of, live, place);
        steps.forEach((step, m) => {
          agree('on', step === 1, must(moves.on[m]));
          agree('back', step === -1, must(moves.back[m]));
        });
        agree(
          'rest',
          steps.every((step) => step === 0),
          moves.rest,
        );
        states++;
      }
    }
    return states;
  };
}

describe('one state at a time and all states as diagrams say the same', { timeout: 60_000 }, () => {
  test('on every right wiring of the unvented three-port, in all 64 × 9 configurations', () => {
    const check = compare(system);
    for (const { wires } of references) expect(check(wires)).toBe(576);
  });

  test('on 40 random and damaged wirings of the unvented three-port', () => {
    const right = references.map(({ wires }) => wires);
    const check = compare(system);
    fc.assert(
      fc.property(wirings(system, right), (wires) => check(wires) === 576),
      { seed, numRuns: 40 },
    );
  });

  test('on 100 random and damaged wirings of a cylinder alone', () => {
    const check = compare(oneTwoPort);
    fc.assert(
      fc.property(wirings(oneTwoPort, [oneTwoPortRight]), (wires) => check(wires) === 8 * 3),
      { seed, numRuns: 100 },
    );
  });

  test('on 200 wirings with two supplies, a relay of several coils and a volt-free pair', () => {
    const check = compare(twoSupplies);
    fc.assert(
      fc.property(wirings(twoSupplies, [twoSuppliesRight]), (wires) => check(wires) === 8 * 2),
      { seed, numRuns: 200 },
    );
  });
});

describe('states as diagrams', () => {
  test('count, pick and has speak of configurations, and no bit pattern past the last position is counted', () => {
    const symbols = makeSymbols(system);
    const { sets, count, pick, has, stands } = symbols;
    expect(count(sets.all)).toBe(64 * 9);
    expect(count(stands(0, 2))).toBe(64 * 3);
    expect(pick(sets.all)).toEqual({ inputs: 0, place: 0 });
    expect(pick(sets.none)).toBeUndefined();
    const chosen = must(pick(sets.and(stands(0, 1), stands(1, 2))));
    expect(chosen).toEqual({
      inputs: 0,
      place: must(system.movers[0]).stride + 2 * must(system.movers[1]).stride,
    });
    expect(has(stands(1, 2), chosen)).toBe(true);
    expect(has(stands(1, 1), chosen)).toBe(false);
  });

  test('each valve is asked about right after the inputs that call it, the supply before all', () => {
    const of = zonesSystem(2);
    const names = orderQuestions(of).map((question) =>
      'input' in question
        ? must(of.inputs[question.input]).id
        : must(of.parts[must(of.movers[question.mover]).part]).id,
    );
    expect(names).toEqual([
      ...['supply', 'hot-water', 'cylinder', 'cut-out', 'water-valve'],
      ...['heating-1', 'room-1', 'frost', 'pipe', 'valve-1'],
      ...['heating-2', 'room-2', 'valve-2'],
    ]);
  });

  test('another zone costs about as many nodes as the one before it, not many times as many', () => {
    const nodes = [2, 4, 6].map((zones) => {
      const symbols = makeSymbols(zonesSystem(zones));
      drawCircuit(symbols, zonesRight(zones));
      return symbols.sets.size();
    });
    const [two, four, six] = [must(nodes[0]), must(nodes[1]), must(nodes[2])];
    expect(six - four).toBeLessThan(2 * (four - two));
  });
});
