import type { Migration } from './migration.ts';

/** Courseworks as learners left them, each by its coursework and learner. */
export const sittings: Migration = {
  version: 4,
  run(db) {
    db.createObjectStore('sittings', { keyPath: 'id' });
  },
};
