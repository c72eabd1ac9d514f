import { type Judging, judgeFor } from '../engine/grade/judge-for.ts';
import type { Verdict } from '../engine/grade/verdict.ts';
import type { System } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';
import { checkWires, parseAttempt } from '../files/attempt.ts';
import { type Library, openLibrary } from './library.ts';

/** An attempt whose job and terminals exist. */
export interface Sound {
  readonly job: string;
  readonly system: System;
  readonly judge: Judging;
  readonly wires: readonly Wire[];
}

/** Reads attempts for the jobs of a library; the judge of a system is made once. */
export function makeReader(library: Library = openLibrary()): (text: string, file: string) => Sound {
  const judges = new Map<System, Judging>();
  /** @throws FileError when the attempt is not sound */
  return (text, file) => {
    const { job, wires } = parseAttempt(text, file);
    const { id, system: systemId } = library.job(job, { file, place: 'job' });
    const { system } = library.system(systemId, { file: library.nameOf('jobs', id), place: 'system' });
    checkWires(system, wires, file);
    const judge = judges.get(system) ?? judgeFor(system);
    judges.set(system, judge);
    return { job: id, system, judge, wires };
  };
}

/** The verdict as the contract publishes it: these keys, in this order. */
export function verdictLine(job: string, { accepted, states, findings }: Verdict): string {
  return JSON.stringify({
    job,
    accepted,
    states,
    findings: findings.map(({ id, severity, says, inputs, steps, terminals }) => ({
      rule: id,
      severity,
      says,
      inputs,
      steps,
      terminals,
    })),
  });
}
