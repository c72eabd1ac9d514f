import type { Migration } from './migration.ts';

/** The log of answers, each once: by its time, objective, variant and attempt; and the choices, under a key of their own. */
export const trialsAndChoices: Migration = {
  version: 1,
  run(db) {
    db.createObjectStore('trials', { keyPath: ['at', 'objective', 'item', 'attempt'] });
    db.createObjectStore('choices');
  },
};
