import {
  type Backup,
  isPlace,
  MOST_SITTINGS,
  MOST_TRIALS,
  MOST_VISITS,
  parseBackup,
  writeBackup,
} from '../files/backup.ts';
import { owned, ownName } from './owner.ts';
import type { KeptStore } from './store.ts';

/** What has come back from a backup: answers that were not here, visits to callouts, and wirings and benches. */
export interface Restored {
  readonly answers: number;
  readonly places: number;
}

/** The wirings and benches that this site keeps in the browser's plain storage, which may be barred. */
function placesIn(plain: Storage | undefined): Record<string, string> {
  const places: Record<string, string> = {};
  try {
    for (const key of Object.keys(plain ?? {})) {
      const name = ownName(key);
      if (name !== undefined && isPlace(name)) places[name] = plain?.getItem(key) ?? '';
    }
  } catch {
    // Nothing to be had there.
  }
  return places;
}

/** The text of a backup of all that is kept on this device; of very many answers, the latest. */
export async function makeBackup(store: KeptStore, plain: Storage | undefined): Promise<string> {
  const [trials, choices, drafts, visits, sittings] = await Promise.all([
    store.trials(),
    store.choices(),
    store.drafts(),
    store.visits(),
    store.sittings(),
  ]);
  const backup: Backup = {
    trials: trials.slice(-MOST_TRIALS),
    choices,
    drafts: [...drafts],
    visits: visits.slice(-MOST_VISITS),
    sittings: sittings.slice(-MOST_SITTINGS),
    places: placesIn(plain),
  };
  return writeBackup(backup, store.now());
}

/**
 * Adds what a backup holds to what is here: nothing that is here is overwritten.
 * @throws FileError when the file is not a sound backup; then nothing has changed
 */
export async function loadBackup(
  store: KeptStore,
  plain: Storage | undefined,
  text: string,
  file: string,
): Promise<Restored> {
  const { places, visits = [], sittings = [], ...progress } = parseBackup(text, file);
  const answers = await store.merge({ ...progress, visits, sittings });
  let restored = 0;
  try {
    for (const [key, kept] of Object.entries(places)) {
      if (!plain || plain.getItem(owned(key)) !== null) continue;
      plain.setItem(owned(key), kept);
      restored++;
    }
  } catch {
    // Full or barred: the answers matter more, and the file is still there.
  }
  return { answers, places: restored };
}
