import type { SystemSpec } from '../engine/model/system.ts';
import type { About } from './about-schema.ts';
import { buildChecked } from './build.ts';
import { checkFit } from './fit.ts';
import type { Mistake, Reference } from './mistake.ts';
import { expandLanding } from './names.ts';
import { checkShape } from './shape.ts';
import { systemSchema } from './system-schema.ts';
import { checkReferences } from './wirings.ts';
import { parseYaml } from './yaml.ts';

export { expandLanding } from './names.ts';

/** A system file: the system itself, wirings of it that are right and wirings that are wrong. */
export interface SystemFile {
  readonly spec: SystemSpec;
  /** The layout in words, for the reference pages. */
  readonly about?: About;
  readonly references: readonly Reference[];
  readonly mistakes: readonly Mistake[];
}

/**
 * A system out of YAML text, checked against the engine: every part, input, pipe, terminal and rule it names exists.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseSystem(yaml: string, file: string): SystemFile {
  const { about, references, mistakes, ...spec } = checkShape(systemSchema, parseYaml(yaml, file), file);
  const system = buildChecked(spec, file);
  checkFit(system, file);
  checkReferences(system, references, mistakes, file);
  return {
    spec,
    ...(about && { about }),
    references: references.map((reference) => ({ ...reference, wires: expandLanding(reference.wires) })),
    mistakes,
  };
}
