import type { KeptVisit } from '../../course/callouts/kept-visit.ts';
import { openStore } from '../../store/open.ts';

/** The latest visit to a callout on this device, over or not; undefined when there is none. */
export const keptVisit = async (callout: string): Promise<KeptVisit | undefined> =>
  (await openStore()).visit(callout);

/** Keeps a visit in place of what was kept of it before. Never rejects; false while this device keeps nothing. */
export async function keepVisit(visit: KeptVisit): Promise<boolean> {
  const store = await openStore();
  await store.keepVisit(visit);
  return !store.troubles().some(({ kind }) => kind === 'blocked' || kind === 'full');
}

/** Forgets an unfinished visit, to start the callout again. */
export const dropVisit = async (id: string): Promise<void> => (await openStore()).dropVisit(id);
