import { openLibrary } from '../src/cli/library.ts';
import type { System } from '../src/engine/model/system.ts';
import type { Wire } from '../src/engine/model/wiring.ts';
import { applyMistake } from '../src/files/mistake.ts';

export interface Wiring {
  readonly id: string;
  readonly wires: readonly Wire[];
}

/** The flagship job with its right and its wrong wirings. */
export interface Material {
  readonly job: string;
  readonly system: System;
  /** Inputs times places: every configuration there is, reachable or not. */
  readonly configurations: number;
  readonly references: readonly Wiring[];
  /** The first reference. */
  readonly reference: Wiring;
  readonly mistakes: readonly Wiring[];
}

export function loadMaterial(job = 'unvented-three-port'): Material {
  const library = openLibrary();
  const asker = { file: 'bench', place: 'job' };
  const { system, references, mistakes } = library.system(library.job(job, asker).system, asker);
  const [reference] = references;
  if (!reference) throw new Error(`${job} has no reference wiring`);
  return {
    job,
    system,
    configurations: 2 ** system.inputs.length * system.places,
    references,
    reference,
    mistakes: mistakes.map((mistake) => ({ id: mistake.id, wires: applyMistake(references, mistake) })),
  };
}
