import { allRules } from '../../engine/rules/index.ts';
import type { Book } from './book.ts';
import { type Slip, slipKey } from './own-numbers.ts';
import type { SlipsByCircuit } from './piece.ts';

/** A rule, and who broke it in which jobs. */
export interface RuleCount {
  readonly rule: string;
  /** What is wrong when it is broken. */
  readonly fails: string;
  readonly codes: readonly string[];
  readonly slots: readonly string[];
}

/** A slip that learners of the class made at a job, in the numbers of the layout's own wiring. */
export interface SlipCount {
  /** Id of the job. */
  readonly job: string;
  readonly slip: Slip;
  readonly codes: readonly string[];
  /** In how many goes it was judged. */
  readonly goes: number;
}

const FAILS = new Map(allRules.map(({ id, fails }) => [id, fails]));

const byCount = (
  a: { readonly codes: readonly string[] },
  b: { readonly codes: readonly string[] },
): number => b.codes.length - a.codes.length;

/** Every rule that somebody broke, the one that most learners broke first; each learner counts once. */
export function rulesBroken({ entries }: Pick<Book, 'entries'>): RuleCount[] {
  const found = new Map<string, { codes: Set<string>; slots: Set<string> }>();
  for (const { code, turns } of entries)
    for (const { slot, marked } of turns)
      for (const rule of marked.rules) {
        const at = found.get(rule) ?? { codes: new Set(), slots: new Set() };
        at.codes.add(code);
        at.slots.add(slot);
        found.set(rule, at);
      }
  return [...found]
    .map(([rule, { codes, slots }]) => ({
      rule,
      fails: FAILS.get(rule) ?? rule,
      codes: [...codes],
      slots: [...slots],
    }))
    .sort(byCount);
}

/** Every wrong wire, the one that most learners had first; each learner counts once for a job. */
export function slipsMade(
  { entries, slots }: Pick<Book, 'entries' | 'slots'>,
  slips: SlipsByCircuit,
): SlipCount[] {
  const jobs = new Map(slots.flatMap((slot) => (slot.kind === 'job' ? [[slot.id, slot.job] as const] : [])));
  const found = new Map<string, { job: string; slip: Slip; codes: Set<string>; goes: number }>();
  for (const { code, turns } of entries)
    for (const { slot, wiring, marked } of turns) {
      const job = jobs.get(slot);
      if (job === undefined || !wiring || marked.right) continue;
      for (const slip of slips.get(wiring.circuit) ?? []) {
        const key = `${job} ${slipKey(slip)}`;
        const at = found.get(key) ?? { job, slip, codes: new Set(), goes: 0 };
        at.codes.add(code);
        at.goes++;
        found.set(key, at);
      }
    }
  return [...found.values()]
    .map(({ codes, ...rest }) => ({ ...rest, codes: [...codes] }))
    .sort((a, b) => byCount(a, b) || b.goes - a.goes);
}

/** How a slot went over the class. */
export interface SlotCount {
  readonly slot: string;
  readonly right: number;
  /** Tried and not right. */
  readonly wrong: number;
  readonly open: number;
}

/** How the class stands, slot by slot, in their order. */
export const slotCounts = ({ entries, slots }: Pick<Book, 'entries' | 'slots'>): SlotCount[] =>
  slots.map(({ id }) => {
    const states = entries.map(({ outcome }) => outcome.states.get(id) ?? 'open');
    const right = states.filter((state) => state === 'right').length;
    const open = states.filter((state) => state === 'open').length;
    return { slot: id, right, open, wrong: states.length - right - open };
  });
