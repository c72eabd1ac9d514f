import { type CalloutAddress, writeCallout } from '../callouts/address.ts';
import type { Item } from '../item.ts';
import { makeItem } from '../items/index.ts';
import type { Layout } from '../layout.ts';
import type { Shelf } from '../task.ts';
import type { Coursework } from './coursework.ts';
import { type JobVariant, jobVariant } from './job-variant.ts';
import { type Slot, variantSeed } from './slots.ts';
import type { GradeSource } from './source.ts';

/** What a learner is given for a slot. The page deals by these, and the mark book looks whether it was dealt so. */

type SlotOf<Kind extends Slot['kind']> = Extract<Slot, { kind: Kind }>;
type Dealing = Pick<Coursework, 'id' | 'seed' | 'variants'>;

/**
 * The question of a learner at an attempt.
 * @throws RangeError when the shelf lacks what the slot names
 */
export const dealQuestion = (
  coursework: Dealing,
  slot: SlotOf<'question'>,
  code: string,
  attempt: number,
  shelf: Shelf,
): Item => makeItem(shelf, slot.about, variantSeed(coursework, code, slot, attempt), slot.level);

/** The callout of a learner at an attempt. */
export function dealVisit(
  coursework: Dealing,
  slot: SlotOf<'callout' | 'fault'>,
  code: string,
  attempt: number,
): CalloutAddress {
  if (slot.kind === 'callout') return { kind: 'authored', id: slot.callout };
  const seed = variantSeed(coursework, code, slot, attempt);
  return { kind: 'made', system: slot.system, seed, level: slot.level };
}

/** The address of the callout of a learner at an attempt. */
export const visitAddress = (...deal: Parameters<typeof dealVisit>): string =>
  writeCallout(dealVisit(...deal));

interface Dealt {
  readonly layout: Layout;
  readonly variant: JobVariant;
}

/** Jobs dealt out of each source: a learner's attempts at one job share what they were given. */
const dealt = new WeakMap<object, Map<string, Dealt>>();
/** So many are kept ready for one source; then it begins anew. */
const MOST_DEALT = 5000;

/**
 * The job of a learner: the same at every attempt.
 * @throws RangeError when the source lacks what the slot names
 */
export function dealJob(
  coursework: Dealing,
  slot: SlotOf<'job'>,
  code: string,
  source: Pick<GradeSource, 'job' | 'layout' | 'judging'>,
): Dealt {
  const seed = variantSeed(coursework, code, slot, 1);
  const known = dealt.get(source) ?? new Map<string, Dealt>();
  dealt.set(source, known);
  const key = `${slot.job} ${seed}`;
  const ready = known.get(key);
  if (ready) return ready;
  const job = source.job(slot.job);
  const layout = source.layout(job.system);
  const fresh = { layout, variant: jobVariant(job, layout, source.judging(job.system).judge, seed) };
  if (known.size >= MOST_DEALT) known.clear();
  known.set(key, fresh);
  return fresh;
}
