import type { Database } from './database.ts';

/** Answers after which there is something worth asking for. */
const SOME_PROGRESS = 10;
/** Kept beside the choices, so that nobody is asked twice. */
const ASKED = 'asked-to-persist';

/**
 * Asks the browser, once and only after some progress, not to clear the site's data when space runs short. What cannot
 * be asked stays as it was.
 */
export async function askToPersist(db: Database, storage: StorageManager | undefined): Promise<void> {
  try {
    if (!storage?.persist || (await db.count('trials')) < SOME_PROGRESS) return;
    if (await db.get('choices', ASKED)) return;
    await db.put('choices', true, ASKED);
    if (!(await storage.persisted())) await storage.persist();
  } catch {
    // The browser may clear the data when it must, as before.
  }
}
