import type { Step, Way } from '../explore/ways.ts';
import { type Config, type Settings, type System, settingsOf } from '../model/system.ts';
import { canonicalWires, type Wire } from '../model/wiring.ts';
import { wiringRules } from '../rules/index.ts';
import type { RuleText, StateRule } from '../rules/rule.ts';
import { viewState } from '../rules/view.ts';
import { viewWiring } from '../rules/wiring-view.ts';
import { bySeverity, type Found, type Verdict } from './verdict.ts';

const COLD: Config = { inputs: 0, place: 0 };

/** A rule about states that is broken: the nearest failing state with the way there, and how many states fail. */
export interface Failed {
  readonly rule: StateRule;
  readonly way: Way;
  readonly failing: number;
}

/**
 * The verdict on a wiring, in words: what its states break, and what the wires alone break.
 * @param states how many states were judged
 */
export function sayVerdict(
  system: System,
  given: readonly Wire[],
  failed: readonly Failed[],
  states: number,
): Verdict {
  // What is said must not depend on how the wires were written down.
  const wires = canonicalWires(given);
  const findings = failed.map(({ rule, way: { config, steps }, failing }): Found => {
    const explanation = rule.explain(viewState(system, wires, config));
    return { ...textOf(rule), ...explanation, ...witness(system, config, steps), failing };
  });
  const wiring = viewWiring(system, wires);
  for (const rule of wiringRules) {
    const found = rule.find(wiring);
    if (found) findings.push({ ...textOf(rule), ...found, ...witness(system, COLD, []), failing: 1 });
  }
  return {
    accepted: findings.every(({ severity }) => severity === 'advice'),
    states,
    findings: findings.sort(bySeverity),
  };
}

/**
 * The rules that a wiring breaks, in the order of the verdict's findings, without their words.
 * @param failed rules about states that are broken
 */
export function listBroken(
  system: System,
  wires: readonly Wire[],
  failed: readonly StateRule[],
): readonly RuleText[] {
  const wiring = viewWiring(system, wires);
  return [...failed, ...wiringRules.filter((rule) => rule.find(wiring))].map(textOf).sort(bySeverity);
}

function textOf({ id, title, fails, severity, source, function: does, compare }: RuleText): RuleText {
  return { id, title, fails, severity, source, function: does, compare };
}

function witness(system: System, config: Config, way: readonly Step[]) {
  const steps: Settings[] = [];
  way.slice(1).forEach(({ inputs }, k) => {
    const changed = inputs ^ way[k]!.inputs;
    const named = Object.entries(settingsOf(system, inputs)).filter((_, bit) => (changed >> bit) & 1);
    steps.push(Object.fromEntries(named));
  });
  return { config, way, inputs: settingsOf(system, config.inputs), steps };
}
