import { openLibrary } from '../../../src/cli/library.ts';
import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { applyMistake } from '../../../src/files/mistake.ts';

/** A system with wirings of it, the right ones first. */
export interface Wired {
  readonly id: string;
  readonly system: System;
  readonly right: readonly (readonly Wire[])[];
  readonly wrong: readonly (readonly Wire[])[];
}

/** Every system of the course with at most this many configurations, with its references and classic mistakes. */
export function courseSystems(most: number): Wired[] {
  const library = openLibrary();
  return library.systemIds
    .map((id): Wired => {
      const { system, references, mistakes } = library.system(id, { file: 'test', place: 'id' });
      return {
        id,
        system,
        right: references.map(({ wires }) => wires),
        wrong: mistakes.map((mistake) => applyMistake(references, mistake)),
      };
    })
    .filter(({ system }) => 2 ** system.inputs.length * system.places <= most);
}
