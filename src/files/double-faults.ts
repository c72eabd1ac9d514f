import * as z from 'zod/mini';
import { faultSpec } from './fault-spec.ts';
import { id, systemId } from './names.ts';
import { checkShape, keys, list, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

const faultsSay = 'two faults, or two cores that changed places';

export const doubleFaultsSchema = list(
  'a list of double faults',
  keys('a double fault: system, wiring, faults, why', {
    system: systemId,
    wiring: z.exactOptional(id),
    faults: list(faultsSay, faultSpec).check(
      z.refine((faults) => faults.length === 2 || (faults.length === 1 && faults[0]?.swap !== undefined), {
        error: faultsSay,
      }),
      z.meta({ minItems: 1, maxItems: 2 }),
    ),
    why: text('a sentence: why the two come together'),
  }),
).check(z.meta({ title: 'Double faults' }));

/** Two faults that come together on a system, which a visit counts among what may be wrong. */
export type DoubleFault = z.infer<typeof doubleFaultsSchema>[number];

/**
 * Double faults out of YAML text.
 * @throws FileError with the place, what was expected there and what was found
 */
export const parseDoubleFaults = (yaml: string, file: string): readonly DoubleFault[] =>
  checkShape(doubleFaultsSchema, parseYaml(yaml, file), file);
