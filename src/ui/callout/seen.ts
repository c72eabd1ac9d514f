import type { Outcome, Test } from '../../engine/diagnose/evidence.ts';
import type { Entry } from '../../engine/diagnose/replay.ts';

/** What somebody saw, heard or felt last, and whether it is still so. */
export interface Seen {
  readonly outcome: Outcome;
  /** False once something was done that may have changed it. */
  readonly fresh: boolean;
}

export type Look = Exclude<Test, { kind: 'reads' }>;

/** One name for a look. */
export const lookKey = ({ kind, part }: Look): string => `${kind} ${part}`;

/** Acts that change nothing that can be seen: questions, papers, covers. */
const QUIET: ReadonlySet<string> = new Set([
  'test',
  'identify',
  'lock',
  'prove',
  'dead-test',
  'open',
  'close',
]);

/** The last answer to each look, by its key. */
export function seenIn(entries: readonly Entry[]): ReadonlyMap<string, Seen> {
  const seen = new Map<string, Seen>();
  const changed = entries.findLastIndex(({ act }) => !QUIET.has(act.do));
  entries.forEach(({ act, outcome }, k) => {
    if (act.do !== 'test' || act.test.kind === 'reads' || outcome === undefined) return;
    seen.set(lookKey(act.test), { outcome, fresh: k > changed });
  });
  return seen;
}
