import type { Step } from '../explore/ways.ts';
import type { Config } from '../model/system.ts';
import type { Finding, Severity } from '../rules/rule.ts';

/** A finding with the state that shows it, for pages that walk there. */
export interface Found extends Finding {
  readonly config: Config;
  /** The way from cold: the first entry is the cold system itself. */
  readonly way: readonly Step[];
  /** How many states fail this rule; 1 for a rule about the wires alone. */
  readonly failing: number;
}

export interface Verdict {
  /** No finding of severity danger or fault. */
  readonly accepted: boolean;
  /** How many states were judged: resting places times settings, reachable from cold. */
  readonly states: number;
  readonly findings: readonly Found[];
}

const grade: Record<Severity, number> = { danger: 0, fault: 1, advice: 2 };
export const bySeverity = (a: Pick<Finding, 'severity'>, b: Pick<Finding, 'severity'>): number =>
  grade[a.severity] - grade[b.severity];
