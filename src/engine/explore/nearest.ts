import type { SymbolicMoves } from '../circuit/symbolic.ts';
import type { Symbols } from '../circuit/symbols.ts';
import { type Config, type Place, positionIndex } from '../model/system.ts';
import { AT_ONCE, MOVE } from './costs.ts';
import { makeWalks, unpowered } from './symbolic.ts';
import type { Step, Way } from './ways.ts';

/** What is new at one cost: states whose settings were just changed, all passed after that, and those that rest. */
interface Layer {
  readonly set: number;
  readonly passed: number;
  readonly settled: number;
}

/**
 * For each set of states wanted, the state of them that is nearest to cold by switch moves, or undefined when none can
 * be met: the same costs as `findWays`, all states of one cost at a time. A set of which nothing can be met is looked for
 * to the end, so give only states that can be.
 */
export function findNearest(
  symbols: Symbols,
  moves: SymbolicMoves,
  wanted: readonly number[],
): (Way | undefined)[] {
  const { sets, inputs, has, pick } = symbols;
  const { pass } = makeWalks(symbols, moves);
  const layers = new Map<number, Layer>();
  const ways: (Way | undefined)[] = wanted.map(() => undefined);
  /** Settings just made, and passed, at no more than the cost in hand. */
  let set = sets.none;
  let passed = sets.none;
  let missing = wanted.filter((states) => !sets.isNone(states)).length;
  const cold = sets.and(unpowered(symbols), allOff(symbols));
  let last = 0;
  for (let cost = 0; cost <= last && missing > 0; cost++) {
    const waited = layers.get(cost - MOVE);
    const hurried = layers.get(cost - AT_ONCE);
    if (cost > 0 && !waited && !hurried) continue;
    const one = waited ? sets.near(waited.settled, inputs) : sets.none;
    const other = hurried ? sets.near(hurried.set, inputs) : sets.none;
    const fresh = cost === 0 ? cold : sets.minus(sets.or(one, other), set);
    if (sets.isNone(fresh)) continue;
    const next = sets.minus(pass(sets.minus(fresh, passed)), passed);
    const settled = sets.and(next, moves.rest);
    // A state at rest is settled at once: setting it anew leads nowhere else.
    set = sets.or(sets.or(set, fresh), settled);
    passed = sets.or(passed, next);
    layers.set(cost, { set: fresh, passed: next, settled });
    last = cost + AT_ONCE;
    wanted.forEach((states, k) => {
      const found = ways[k] ? undefined : pick(sets.and(states, next));
      if (!found) return;
      ways[k] = { config: found, steps: stepsTo(found, cost) };
      missing--;
    });
  }
  return ways;

  /** The way to a state first passed at this cost, told backwards from it. */
  function stepsTo(target: Config, at: number): Step[] {
    const steps: Step[] = [];
    let end: Config | undefined = target;
    for (let cost = at; end; ) {
      const places = walkBack(end, layers.get(cost)!.set);
      const place = places[0]!;
      steps.unshift({ inputs: end.inputs, places });
      let before: Config = { inputs: end.inputs, place };
      end = undefined;
      while (cost > 0 && !end) {
        const neighbours: Config[] = symbols.system.inputs.map((_, k) => ({
          inputs: before.inputs ^ (1 << k),
          place,
        }));
        const waited = layers.get(cost - MOVE)?.settled ?? sets.none;
        end = neighbours.find((config) => has(waited, config));
        if (end) {
          cost -= MOVE;
          break;
        }
        const hurried = layers.get(cost - AT_ONCE)?.set ?? sets.none;
        before = neighbours.find((config) => has(hurried, config))!;
        cost -= AT_ONCE;
      }
    }
    return steps;
  }

  /** Places from the nearest state of `starts` with the same settings to this one, by moves of one valve each. */
  function walkBack({ inputs: settings, place: target }: Config, starts: number): Place[] {
    const { movers } = symbols.system;
    const after = new Map<Place, Place>([[target, -1]]);
    for (const place of after.keys()) {
      if (has(starts, { inputs: settings, place })) {
        const line: Place[] = [];
        for (let at = place; at >= 0; at = after.get(at)!) line.push(at);
        return line;
      }
      movers.forEach((mover, m) => {
        const index = positionIndex(mover, place);
        for (const [from, fits, going] of [
          [place - mover.stride, index > 0, moves.on],
          [place + mover.stride, index < mover.positions.length - 1, moves.back],
        ] as const) {
          if (!fits || after.has(from) || !has(going[m]!, { inputs: settings, place: from })) continue;
          after.set(from, place);
        }
      });
    }
    throw new Error('no way back to where the switches were moved');
  }
}

const allOff = ({ system, sets, isSet }: Symbols): number =>
  system.inputs.reduce((set, _, input) => sets.and(set, isSet(input, 0)), sets.all);
