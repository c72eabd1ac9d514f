import * as z from 'zod/mini';
import type { System } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';
import { FileError, show } from './error.ts';
import { parseJson } from './json.ts';
import { wire } from './names.ts';
import { placeAt } from './place.ts';
import { checkShape, list, text } from './shape.ts';
import { oneOf } from './suggest.ts';

/** An attempt has at most so many wires, and its file so many bytes. */
export const MOST_WIRES = 2000;
export const MOST_BYTES = 1 << 20;

const tooMany = `at most ${MOST_WIRES} wires`;
const wires = list('a list of wires', wire).check(z.maxLength(MOST_WIRES, { error: tooMany }));
const says = 'an attempt: {"job": "…", "wires": [["…", "…"], …]}';

/** An attempt at a job. Colleges keep these files for years and may add keys of their own: they are passed over. */
export const attemptSchema = z.object({ job: text('the id of a job'), wires }, { error: says }).check(
  z.meta({
    title: 'Attempt',
    description: 'Every wire that is in place, those that a job gives included.',
  }),
);

export interface Attempt {
  readonly job: string;
  readonly wires: readonly Wire[];
}

/**
 * An attempt out of JSON text. Whether its terminals exist depends on the job's system: see `checkWires`.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseAttempt(json: string, file: string): Attempt {
  if (json.length > MOST_BYTES) throw tooBig(file);
  const data = parseJson(json, file);
  // Counted first: the schema would look at every one of a million wires before it minds their number.
  const given = typeof data === 'object' && data !== null && 'wires' in data ? data.wires : undefined;
  if (Array.isArray(given) && given.length > MOST_WIRES)
    throw new FileError({ file, place: 'wires', expected: tooMany, found: show(given) });
  return checkShape(attemptSchema, data, file);
}

export const tooBig = (file: string): FileError =>
  new FileError({ file, place: placeAt([]), expected: `at most ${MOST_BYTES} bytes`, found: 'more' });

/**
 * Checks that every wire joins two different terminals of the system.
 * @param at where the wires stand in the file
 * @throws FileError with the first wire that does not
 */
export function checkWires(
  system: System,
  wires: readonly Wire[],
  file: string,
  at: readonly PropertyKey[] = ['wires'],
): void {
  wires.forEach((ends, k) => {
    for (const [end, name] of ends.entries()) checkTerminal(system, name, file, [...at, k, end]);
    if (ends[0] === ends[1]) {
      const expected = 'a wire between two different terminals';
      throw new FileError({ file, place: placeAt([...at, k]), expected, found: `${show(ends[0])} twice` });
    }
  });
}

/** @throws FileError when the system has no such terminal */
export function checkTerminal(
  system: System,
  name: string,
  file: string,
  path: readonly PropertyKey[],
): void {
  const node = system.nodeOf.get(name);
  // Nodes inside a part have numbers above the terminals': no wire reaches them.
  if (node !== undefined && node < system.terminals) return;
  const wireable = system.parts.filter(({ kind }) => kind.terminals.length > 0);
  const slash = name.indexOf('/');
  const part = wireable.find(({ id }) => id === name.slice(0, slash));
  const expected = part
    ? `a terminal of ${part.id}: ${oneOf(
        name.slice(slash + 1),
        part.kind.terminals.map(({ id }) => id),
      )}`
    : `a part of this system: ${oneOf(
        name.slice(0, slash),
        wireable.map(({ id }) => id),
      )}`;
  throw new FileError({ file, place: placeAt(path), expected, found: show(name) });
}
