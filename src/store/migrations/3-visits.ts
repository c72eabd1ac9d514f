import type { Migration } from './migration.ts';

/** Visits to callouts, each by its id. */
export const visits: Migration = {
  version: 3,
  run(db) {
    db.createObjectStore('visits', { keyPath: 'id' });
  },
};
