import * as z from 'zod/mini';
import { id } from './names.ts';
import { checkShape, keys, list, map, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

const schema = map(
  'notes by kind of part',
  id,
  keys('notes on a kind of part: does, also, caution', {
    does: text('what it is for, in one or two sentences'),
    also: z._default(list('a list of other names', text('a name')), []),
    caution: z.exactOptional(text('what to mind')),
  }),
);

/** What the reference pages say of a kind of part beyond what its own file says. */
export interface PartNote {
  /** What it is for. */
  readonly does: string;
  /** Other names that people use. */
  readonly also: readonly string[];
  /** What to mind, where there is a risk. */
  readonly caution?: string;
}

/**
 * Notes by kind of part, out of YAML text.
 * @throws FileError with the place, what was expected there and what was found
 */
export const parsePartNotes = (yaml: string, file: string): ReadonlyMap<string, PartNote> =>
  new Map(Object.entries(checkShape(schema, parseYaml(yaml, file), file)));
