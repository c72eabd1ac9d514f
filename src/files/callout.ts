import * as z from 'zod/mini';
import type { Settings } from '../engine/model/system.ts';
import { type FaultSpec, faultSpec } from './fault-spec.ts';
import { id, settings, systemId } from './names.ts';
import { checkShape, keys, list, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

const SHOWS = ['works', 'idle', 'warm', 'cold'] as const;

const complaint = keys('what the customer has noticed: set, part, is', {
  set: settings,
  part: id,
  is: z.enum(SHOWS, { error: `one of ${SHOWS.join(', ')}` }),
});

const levelSays = '1, 2 or 3';
export const calloutSchema = keys(
  'a callout: title, system, wiring, level, customer, house, found, complaints, fault, after, sources',
  {
    title: text('a title'),
    system: systemId,
    wiring: z.exactOptional(id),
    level: z.literal([1, 2, 3], { error: levelSays }).check(z.meta({ description: levelSays })),
    customer: text('what the customer says, in plain words'),
    house: text('a sentence or two: who lives there, and what the engineer meets'),
    found: settings,
    complaints: list('a list of what the customer has noticed', complaint).check(
      z.minLength(1, { error: 'at least one complaint' }),
    ),
    fault: list('a list of one fault or two', faultSpec).check(
      z.minLength(1, { error: 'at least one fault' }),
      z.maxLength(2, { error: 'two faults at most' }),
    ),
    after: text('what it was, how it comes about, and how to put it right safely'),
    sources: list('a list of sources', text('a source with its edition, or common practice')).check(
      z.minLength(1, { error: 'at least one source' }),
    ),
  },
).check(z.meta({ title: 'Callout' }));

/** What a customer has noticed about a part with these settings, set from cold. */
export interface ComplaintSpec {
  readonly set: Settings;
  readonly part: string;
  readonly is: (typeof SHOWS)[number];
}

/** A callout as its author wrote it. */
export interface CalloutFile {
  /** The name of its file, and its address. */
  readonly id: string;
  readonly title: string;
  /** Id of the system. */
  readonly system: string;
  /** Id of a right wiring of the system; the first one unless told. */
  readonly wiring?: string;
  readonly level: 1 | 2 | 3;
  readonly customer: string;
  readonly house: string;
  /** Settings on arrival. */
  readonly found: Settings;
  readonly complaints: readonly ComplaintSpec[];
  readonly fault: readonly FaultSpec[];
  readonly after: string;
  readonly sources: readonly string[];
}

/**
 * A callout out of YAML text. Whether its names are those of the system and its claims hold, `npm run check` sees.
 * @param own the callout's id, which its file is named after
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseCallout(yaml: string, file: string, own: string): CalloutFile {
  const callout = checkShape(calloutSchema, parseYaml(yaml, file), file);
  const { customer, house, after } = callout;
  return {
    id: own,
    ...callout,
    customer: customer.trim(),
    house: house.trim(),
    after: after.trim(),
  };
}
