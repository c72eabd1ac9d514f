import type { KeptVisit } from '../../course/callouts/kept-visit.ts';
import type { Answer } from '../../course/item.ts';
import { isVisit } from '../../store/records.ts';
import type { Draft, Store } from '../../store/store.ts';

/** What was begun for a slot and not yet answered. It is kept at every touch, so that a reload loses nothing. */
export interface Begun {
  /** Which attempt it belongs to. */
  readonly attempt: number;
  /** How many helps have been opened, 0 to 3. */
  readonly hints: number;
  /** Milliseconds spent on it, over all the times that the page was open. */
  readonly spent: number;
  readonly answer?: Answer;
  readonly visit?: KeptVisit;
}

const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0;

/** What was begun, out of what the device hands back; undefined where that is nothing usable. */
export function readBegun(draft: Draft | undefined): Begun | undefined {
  const data = draft?.answer;
  if (typeof data !== 'object' || data === null) return undefined;
  const { attempt, hints, spent, answer, visit } = data as Partial<Record<keyof Begun, unknown>>;
  if (!(isCount(attempt) && isCount(hints) && isCount(spent))) return undefined;
  return {
    attempt,
    hints,
    spent,
    // The form of the question checks the answer when it is shown.
    ...(typeof answer === 'object' && answer !== null && { answer: answer as Answer }),
    ...(isVisit(visit) && { visit }),
  };
}

/** Where a slot's draft is kept. */
export const placeOf = (sitting: string, slot: string): string => `coursework/${sitting}/${slot}`;

type Drafts = Pick<Store, 'draft' | 'keepDraft' | 'now'>;

/** What was begun for one attempt at a slot. */
export async function begunAt(
  store: Drafts,
  sitting: string,
  slot: string,
  attempt: number,
): Promise<Begun | undefined> {
  const begun = readBegun(await store.draft(placeOf(sitting, slot)));
  return begun?.attempt === attempt ? begun : undefined;
}

/** Keeps what was begun. */
export const keepBegun = (store: Drafts, sitting: string, slot: string, begun: Begun): Promise<void> =>
  store.keepDraft({ place: placeOf(sitting, slot), item: 'coursework', answer: begun, at: store.now() });
