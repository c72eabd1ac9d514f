import type { Migration } from './migration.ts';

/** Answers begun, by the place they stand in; and the log by objective, so that a lesson need not read all of it. */
export const draftsAndObjectives: Migration = {
  version: 2,
  run(db, change) {
    db.createObjectStore('drafts', { keyPath: 'place' });
    change.objectStore('trials').createIndex('objective', 'objective');
  },
};
