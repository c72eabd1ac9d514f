import type { IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';

/** The database as it is while it changes: of any version. */
export type Changing = IDBPDatabase<unknown>;
export type Change = IDBPTransaction<unknown, StoreNames<unknown>[], 'versionchange'>;

/** One step of the database's structure. Once published it is never edited: a later step puts right what it got wrong. */
export interface Migration {
  readonly version: number;
  readonly run: (db: Changing, change: Change) => void;
}
