import { openLibrary } from '../../../src/cli/library.ts';
import type { System } from '../../../src/engine/model/system.ts';

const library = openLibrary();
const asker = { file: 'tests', place: 'systems' };

/** Every system of the course, by id. */
export const librarySystems = library.systemIds.map((id) => ({ id, ...library.system(id, asker) }));

/** Configurations that a test may go through one by one. */
const FEW = 1 << 18;

/** Those with few enough states to look at one by one, as rows of a test table. */
export const smallSystems = (): [id: string, system: System][] =>
  librarySystems
    .filter(({ system }) => system.places * 2 ** system.inputs.length <= FEW)
    .map(({ id, system }) => [id, system]);
