import type { System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import type { RuleText } from '../rules/rule.ts';
import { makeJudge } from './judge.ts';
import { isWide } from './size.ts';
import type { Verdict } from './verdict.ts';
import { makeWideJudge } from './wide-judge.ts';

/** Whoever comes to a verdict on wirings of one system. */
export interface Judging {
  readonly judge: (wires: readonly Wire[]) => Verdict;
  /** The rules that a wiring breaks, the gravest first: what the verdict finds, in less time as nothing is explained. */
  readonly rulesBroken: (wires: readonly Wire[]) => readonly RuleText[];
}

/** The judge that suits the size of a system. Both come to the same verdict. */
export const judgeFor = (system: System): Judging =>
  isWide(system) ? makeWideJudge(system) : makeJudge(system);
