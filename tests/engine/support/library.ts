import { openLibrary } from '../../../src/cli/library.ts';
import type { System } from '../../../src/engine/model/system.ts';

const library = openLibrary();
const asker = { file: 'tests', place: 'systems' };

/** Every system of the course, by id. */
export const librarySystems = library.systemIds.map((id) => ({ id, ...library.system(id, asker) }));

/** Configurations of a system: combinations of inputs times places of the valves. */
const configurations = ({ places, inputs }: System): number => places * 2 ** inputs.length;

/** Those with few enough configurations to look at one by one, as rows of a test table. */
export const plainSystems = (most: number): [id: string, system: (typeof librarySystems)[number]][] =>
  librarySystems
    .filter(({ system }) => configurations(system) <= most)
    .map((system): [string, typeof system] => [system.id, system]);

/** The same with the system alone, for what is asked of the system and not of a wiring. */
export const smallSystems = (): [id: string, system: System][] =>
  plainSystems(1 << 18).map(([id, { system }]) => [id, system]);
