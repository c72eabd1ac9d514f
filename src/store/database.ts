import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { migrations, VERSION } from './migrations/index.ts';
import { owned } from './owner.ts';

/** The database of the device's own learner; that of another owner has a longer name. */
export const NAME = 'switched-live';

/** The present structure. What is read is checked: an older site, or another hand, may have written it. */
export interface Structure extends DBSchema {
  trials: { key: [number, string, string, number]; value: unknown; indexes: { objective: string } };
  choices: { key: string; value: unknown };
  drafts: { key: string; value: unknown };
  visits: { key: string; value: unknown };
  sittings: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Structure>;
export type StoreName = 'trials' | 'choices' | 'drafts' | 'visits' | 'sittings';
export const STORES: StoreName[] = ['trials', 'choices', 'drafts', 'visits', 'sittings'];

/** What may happen to a database while it is opened or open. */
export interface Watch {
  /** Another tab holds an older version open, and the opening waits for it. */
  readonly waits: () => void;
  /** It is closed because another tab needs a newer version. */
  readonly outdated: () => void;
  /** The browser has closed it. */
  readonly lost: () => void;
}

/**
 * Opens the database, and brings an older one up to date.
 * @param version of the site that asks; the present one but for tests
 * @throws DOMException, or TypeError where there is no such thing: see `troubleOf`
 */
export async function openDatabase({ waits, outdated, lost }: Watch, version = VERSION): Promise<Database> {
  return openDB<Structure>(owned(NAME), version, {
    upgrade(db, from, _to, change) {
      for (const step of migrations)
        if (step.version > from && step.version <= version) step.run(db as never, change as never);
    },
    blocked: waits,
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      outdated();
    },
    terminated: lost,
  });
}
