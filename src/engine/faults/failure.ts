import type { FailureSpec } from '../model/part.ts';
import type { System } from '../model/system.ts';
import { type Wire, wireKey } from '../model/wiring.ts';
import { sayNode } from '../rules/words.ts';

/** One thing that has failed: a part, in one of the ways its kind lists, or a wire that is broken. */
export type Failure = { readonly part: number; readonly spec: FailureSpec } | { readonly wire: Wire };

/** A stable name for a failure: "two-port: passing", "wire: pump/E strip/12". */
export const failureId = (system: System, failure: Failure): string =>
  'wire' in failure
    ? `wire: ${wireKey(failure.wire)}`
    : `${system.parts[failure.part]!.id}: ${failure.spec.id}`;

/** A failure as a person says it: "the two-port valve lets by while shut". */
export function sayFailure(system: System, failure: Failure): string {
  if ('wire' in failure) {
    // A wire has no direction, so it is said the same whichever way round it was written.
    const [a, b] = [...failure.wire].sort().map((end) => sayNode(system, system.nodeOf.get(end)!));
    return `the wire from ${a} to ${b} is broken`;
  }
  return `the ${system.parts[failure.part]!.name.toLowerCase()} ${failure.spec.says}`;
}

/** Everything that can fail in a wired system: each way of each part, and each wire. */
export function allFailures(system: System, wires: readonly Wire[]): Failure[] {
  return [
    ...system.parts.flatMap(({ kind }, part) => (kind.failures ?? []).map((spec) => ({ part, spec }))),
    ...wires.map((wire) => ({ wire })),
  ];
}

/** Whether two failures can be there at once: one contact cannot be both welded and open, nor a valve stuck twice. */
export function compatible(a: Failure, b: Failure): boolean {
  if ('wire' in a || 'wire' in b || a.part !== b.part) return true;
  const [p, q] = [a.spec, b.spec];
  if (p.stuck !== undefined && q.stuck !== undefined) return false;
  return !Object.keys(p.contacts ?? {}).some((contact) => contact in (q.contacts ?? {}));
}
