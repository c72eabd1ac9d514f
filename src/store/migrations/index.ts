import { trialsAndChoices } from './1-trials-and-choices.ts';
import { draftsAndObjectives } from './2-drafts-and-objectives.ts';
import { visits } from './3-visits.ts';
import { sittings } from './4-sittings.ts';
import type { Migration } from './migration.ts';

/** Every step from an empty database to the present one, in order. */
export const migrations: readonly Migration[] = [trialsAndChoices, draftsAndObjectives, visits, sittings];

/** The present version. */
export const VERSION = migrations.length;
