import type { Wire } from '../../engine/model/wiring.ts';
import { owned } from '../../store/owner.ts';

/** Where a job's wires are kept on this device, so that a reload brings them back. At build time nobody is the owner. */
export const keyOf = (job: string): string => owned(`switched-live/wiring/1/${job}`);

export type Kept = 'kept' | 'blocked' | 'full';

/** Keeps a wiring. Says when the browser will not, so that the learner can take the link instead. */
export function keepWires(job: string, wires: readonly Wire[]): Kept {
  try {
    localStorage.setItem(keyOf(job), JSON.stringify({ job, wires }));
    return 'kept';
  } catch (problem) {
    return problem instanceof DOMException && problem.name === 'QuotaExceededError' ? 'full' : 'blocked';
  }
}

/** The wires kept for a job that still fit it, or undefined when nothing usable is there. */
export function keptWires(job: string, terminals: ReadonlyMap<string, number>): Wire[] | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(job)) ?? 'null');
    const wires = (kept as { wires?: unknown } | null)?.wires;
    if (!Array.isArray(wires)) return undefined;
    return wires.filter(
      (wire): wire is Wire =>
        Array.isArray(wire) &&
        wire.length === 2 &&
        wire[0] !== wire[1] &&
        wire.every((end) => typeof end === 'string' && terminals.has(end)),
    );
  } catch {
    return undefined;
  }
}
