import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { applyMistake } from '../../../src/files/mistake.ts';
import { drawSchematic, type Schematic } from '../../../src/ui/schematic/schematic.ts';
import { librarySystems } from '../../engine/support/library.ts';

/** One wiring of a system with its schematic. */
export interface Case {
  readonly name: string;
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly drawing: Schematic;
}

const draw = (name: string, system: System, wires: readonly Wire[]): Case => ({
  name,
  system,
  wires,
  drawing: drawSchematic(system, wires),
});

/** Every system of the course, with its right wirings, its wrong ones and no wires at all. */
export const systems = librarySystems.map(({ id, system, references, mistakes }) => {
  const right = references.map((reference) => draw(`${id}, ${reference.id}`, system, reference.wires));
  const wrong = mistakes.map((mistake) =>
    draw(`${id}, ${mistake.id}`, system, applyMistake(references, mistake)),
  );
  return { id, right, all: [...right, ...wrong, draw(`${id}, bare`, system, [])] };
});
