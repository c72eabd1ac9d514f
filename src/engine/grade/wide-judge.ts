import { drawCircuit } from '../circuit/symbolic.ts';
import { makeSymbols } from '../circuit/symbols.ts';
import { findNearest } from '../explore/nearest.ts';
import { exploreSymbolic } from '../explore/symbolic.ts';
import type { System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { stateRules } from '../rules/index.ts';
import type { RuleText } from '../rules/rule.ts';
import { type LiveSets, makeGround, makeWork } from '../rules/sets-view.ts';
import { listBroken, sayVerdict } from './findings.ts';
import type { Verdict } from './verdict.ts';

/**
 * The judge of a system with too many states to hold side by side. It keeps sets of states as decision diagrams, and
 * comes to the same verdict as `makeJudge`: nothing is left out, as what does not matter to a set takes no room in it.
 */
export function makeWideJudge(system: System) {
  const symbols = makeSymbols(system);
  const ground = makeGround(system, symbols);
  const work = makeWork(ground);
  const tests = stateRules.map(({ where }) => where(ground));
  symbols.sets.keep();

  function sweepStates(wires: readonly Wire[]) {
    symbols.sets.reset();
    const { moves, works, ...live } = drawCircuit(symbols, wires);
    const reach = exploreSymbolic(symbols, moves);
    const working = work.working(works);
    const view: LiveSets<number> = {
      ...live,
      working,
      heated: work.heated(working),
      hunting: reach.hunting,
    };
    const failed = stateRules
      .map((rule, r) => {
        const states = rule.scope === 'rest' ? reach.judged : reach.met;
        return { rule, broken: symbols.sets.and(states, tests[r]!(view)) };
      })
      .filter(({ broken }) => !symbols.sets.isNone(broken));
    return { failed, moves, reach };
  }

  function judge(wires: readonly Wire[]): Verdict {
    const { failed, moves, reach } = sweepStates(wires);
    const ways = findNearest(
      symbols,
      moves,
      failed.map(({ broken }) => broken),
    );
    const failures = failed.map(({ rule, broken }, k) => ({
      rule,
      way: ways[k]!,
      failing: symbols.count(broken),
    }));
    return sayVerdict(system, wires, failures, symbols.count(reach.judged));
  }

  /** See `Judging`. */
  const rulesBroken = (wires: readonly Wire[]): readonly RuleText[] =>
    listBroken(
      system,
      wires,
      sweepStates(wires).failed.map(({ rule }) => rule),
    );

  return { judge, rulesBroken };
}
