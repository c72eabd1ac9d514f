import type { IDBPTransaction } from 'idb';
import type { KeptVisit } from '../course/callouts/kept-visit.ts';
import type { Sitting } from '../course/coursework/work.ts';
import type { Trial } from '../course/trial.ts';
import type { StoreName, Structure } from './database.ts';
import { isSitting, readChoices, trialKey } from './records.ts';
import { unitedSitting } from './sittings.ts';
import type { Choices, Draft } from './store.ts';

/** A change of progress: kept in memory until the database has it. */
export type Change =
  | { readonly kind: 'trial'; readonly trial: Trial }
  | { readonly kind: 'choose'; readonly choices: Choices }
  | { readonly kind: 'forget'; readonly names: readonly (keyof Choices)[] }
  | { readonly kind: 'draft'; readonly draft: Draft }
  | { readonly kind: 'drop'; readonly place: string }
  | { readonly kind: 'visit'; readonly visit: KeptVisit }
  | { readonly kind: 'drop-visit'; readonly id: string }
  | { readonly kind: 'sitting'; readonly sitting: Sitting }
  | { readonly kind: 'drop-sitting'; readonly id: string }
  | { readonly kind: 'clear' };

/** The key that the choices are kept under. */
export const CHOICES = 'choices';

type Writing = IDBPTransaction<Structure, StoreName[], 'readwrite'>;

/** Makes a change in the database. Rejects when the browser refuses it. */
export async function write(to: Writing, change: Change): Promise<void> {
  const trials = to.objectStore('trials');
  const choices = to.objectStore('choices');
  const drafts = to.objectStore('drafts');
  const visits = to.objectStore('visits');
  const sittings = to.objectStore('sittings');
  switch (change.kind) {
    case 'trial':
      await trials.put(change.trial);
      return;
    case 'draft':
      await drafts.put(change.draft);
      return;
    case 'drop':
      return drafts.delete(change.place);
    case 'visit':
      await visits.put(change.visit);
      return;
    case 'drop-visit':
      return visits.delete(change.id);
    case 'sitting': {
      // Another tab may have added work since this one read.
      const [here] = [await sittings.get(change.sitting.id)].filter(isSitting);
      await sittings.put(here ? unitedSitting(here, change.sitting) : change.sitting);
      return;
    }
    case 'drop-sitting':
      return sittings.delete(change.id);
    case 'clear':
      await Promise.all([trials, choices, drafts, visits, sittings].map((one) => one.clear()));
      return;
    default:
      await choices.put(choicesAfter(readChoices(await choices.get(CHOICES)), [change]), CHOICES);
  }
}

/** The log as it is with changes that the database has not got yet. */
export function trialsAfter(trials: readonly Trial[], changes: readonly Change[]): readonly Trial[] {
  const added = changes.flatMap((change) => (change.kind === 'trial' ? [change.trial] : []));
  const end = trials.at(-1)?.at ?? -1;
  const isPlain = !changes.some(({ kind }) => kind === 'clear');
  if (isPlain && added.every(({ at }, k) => at > (added[k - 1]?.at ?? end)))
    return added.length > 0 ? [...trials, ...added] : trials;
  const log = new Map(trials.map((trial) => [trialKey(trial), trial]));
  for (const change of changes) {
    if (change.kind === 'clear') log.clear();
    if (change.kind === 'trial') log.set(trialKey(change.trial), change.trial);
  }
  return [...log.values()].sort((a, b) => a.at - b.at);
}

export function choicesAfter(choices: Choices, changes: readonly Change[]): Choices {
  let now: Choices = choices;
  for (const change of changes) {
    if (change.kind === 'clear') now = {};
    if (change.kind === 'choose') now = { ...now, ...change.choices };
    if (change.kind === 'forget')
      now = Object.fromEntries(
        Object.entries(now).filter(([name]) => !change.names.includes(name as keyof Choices)),
      );
  }
  return now;
}

export function draftsAfter(drafts: readonly Draft[], changes: readonly Change[]): readonly Draft[] {
  const now = new Map(drafts.map((draft) => [draft.place, draft]));
  for (const change of changes) {
    if (change.kind === 'clear') now.clear();
    if (change.kind === 'draft') now.set(change.draft.place, change.draft);
    if (change.kind === 'drop') now.delete(change.place);
  }
  return [...now.values()];
}

/** Visits as they are then, the one touched last at the end. */
export function visitsAfter(visits: readonly KeptVisit[], changes: readonly Change[]): readonly KeptVisit[] {
  const now = new Map(visits.map((visit) => [visit.id, visit]));
  for (const change of changes) {
    if (change.kind === 'clear') now.clear();
    if (change.kind === 'visit') now.set(change.visit.id, change.visit);
    if (change.kind === 'drop-visit') now.delete(change.id);
  }
  return [...now.values()].sort((a, b) => a.at - b.at);
}

/** Sittings as they are then, the one touched last at the end. */
export function sittingsAfter(sittings: readonly Sitting[], changes: readonly Change[]): readonly Sitting[] {
  const now = new Map(sittings.map((sitting) => [sitting.id, sitting]));
  for (const change of changes) {
    if (change.kind === 'clear') now.clear();
    if (change.kind === 'sitting') {
      const here = now.get(change.sitting.id);
      now.set(change.sitting.id, here ? unitedSitting(here, change.sitting) : change.sitting);
    }
    if (change.kind === 'drop-sitting') now.delete(change.id);
  }
  return [...now.values()].sort((a, b) => a.at - b.at);
}

/** Visits that are over are kept up to this many. */
const MOST_OVER = 200;

/** What to forget so that not too many visits are kept: of those that are over, the oldest. */
export const tooMany = (visits: readonly KeptVisit[]): readonly Change[] => {
  const over = visits.filter(({ done }) => done);
  return over.slice(0, Math.max(0, over.length - MOST_OVER)).map(({ id }) => ({ kind: 'drop-visit', id }));
};
