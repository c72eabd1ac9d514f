import * as z from 'zod/mini';
import type { SystemPart, SystemSpec } from '../engine/model/system.ts';
import { distinctWires, type Wire } from '../engine/model/wiring.ts';
import { findKind, kindNames } from '../engine/parts/index.ts';
import { checkWires, MOST_BYTES, tooBig } from './attempt.ts';
import { benchSpec } from './bench-spec.ts';
import { buildChecked } from './build.ts';
import { FileError, show } from './error.ts';
import { parseJson } from './json.ts';
import { id, wire } from './names.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, list, map, text } from './shape.ts';
import { oneOf } from './suggest.ts';
import { core } from './system-schema.ts';

/** What a bench holds at most: terminals are numbered in one byte each in a link. */
export const MOST_PARTS = 40;
export const MOST_WAYS = 24;
export const MOST_TERMINALS = 250;
export const MOST_BENCH_WIRES = 400;
/** Letters of a name. */
export const MOST_NAME = 60;

const name = (expected: string) => text(expected).check(z.maxLength(MOST_NAME, { error: expected }));
const nameSays = `a name of at most ${MOST_NAME} letters`;
const versionSays = '1, the version of the format';

const part = keys('a part: kind, name', {
  kind: text('a kind of part'),
  name: name(nameSays),
  short: z.exactOptional(name(nameSays)),
  options: z.exactOptional(
    map('options of the kind', id, z.union([z.number(), z.string()], { error: 'a number or text' })),
  ),
  cores: z.exactOptional(map('core colours by terminal', text('a terminal'), core)),
  sleeved: z.exactOptional(list('a list of terminals', text('a terminal'))),
});

const manyWires = `at most ${MOST_BENCH_WIRES} wires`;

export const benchSchema = keys('a bench: bench, name, parts, wires', {
  bench: z.literal(1, { error: versionSays }).check(z.meta({ description: versionSays })),
  name: name(nameSays),
  layout: z.exactOptional(id),
  parts: map('parts by id', id, part),
  wires: list('a list of wires', wire).check(z.maxLength(MOST_BENCH_WIRES, { error: manyWires })),
}).check(
  z.meta({
    title: 'Bench',
    description: 'Parts that somebody has put together, and the wires between them.',
  }),
);

/** Parts that somebody has put together, and the wires between them. */
export interface Bench {
  readonly name: string;
  /** The layout of the library whose parts these are, under the same ids; left out on a free bench. */
  readonly layout?: string;
  readonly parts: Readonly<Record<string, SystemPart>>;
  readonly wires: readonly Wire[];
}

/**
 * A bench out of JSON text.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseBench(json: string, file: string): Bench {
  if (json.length > MOST_BYTES) throw tooBig(file);
  return checkBench(parseJson(json, file), file);
}

/**
 * A bench out of data: of the right shape, with parts of known kinds that the engine can put together, and wires between
 * terminals that are there. The same wire twice is one wire.
 * @throws FileError with the place, what was expected there and what was found
 */
export function checkBench(data: unknown, file: string): Bench {
  const given = typeof data === 'object' && data !== null && 'wires' in data ? data.wires : undefined;
  // Counted first: the schema would look at every one of a million wires before it minds their number.
  if (Array.isArray(given) && given.length > MOST_BENCH_WIRES)
    throw new FileError({ file, place: 'wires', expected: manyWires, found: show(given) });
  const { name, layout, parts, wires } = checkShape(benchSchema, data, file);
  const bench: Bench = { name, ...(layout !== undefined && { layout }), parts, wires: distinctWires(wires) };
  checkParts(bench, file);
  const system = buildChecked(benchSpec(bench), file);
  if (system.terminals > MOST_TERMINALS) {
    const expected = `parts with at most ${MOST_TERMINALS} terminals together`;
    throw new FileError({ file, place: 'parts', expected, found: String(system.terminals) });
  }
  checkWires(system, wires, file);
  return bench;
}

function checkParts({ parts }: Pick<Bench, 'parts'>, file: string): void {
  const fail = (path: readonly PropertyKey[], expected: string, found: string): never => {
    throw new FileError({ file, place: placeAt(path), expected, found });
  };
  const entries = Object.entries(parts);
  if (entries.length > MOST_PARTS) fail(['parts'], `at most ${MOST_PARTS} parts`, String(entries.length));
  let strips = 0;
  let supplies = 0;
  for (const [id, { kind, options, cores, sleeved }] of entries) {
    if (kind === 'strip') {
      strips++;
      const ways = options?.ways ?? 12;
      const whole = typeof ways === 'number' && Number.isInteger(ways) && ways >= 1 && ways <= MOST_WAYS;
      if (!whole) fail(['parts', id, 'options', 'ways'], `a whole number from 1 to ${MOST_WAYS}`, show(ways));
    }
    const made = findKind(kind, options ?? {});
    if (!made) {
      fail(['parts', id, 'kind'], oneOf(kind, kindNames()), show(kind));
      continue;
    }
    if (made.supply) supplies++;
    const terminals = made.terminals.map((terminal) => terminal.id);
    for (const name of [...Object.keys(cores ?? {}), ...(sleeved ?? [])])
      if (!terminals.includes(name))
        fail(['parts', id, cores && name in cores ? 'cores' : 'sleeved'], oneOf(name, terminals), show(name));
  }
  if (strips !== 1) fail(['parts'], 'one part of kind strip', String(strips));
  if (supplies === 0) fail(['parts'], 'a part that supplies the rest, such as a fused-spur', 'none');
}

/** The text of a bench's file. */
export function writeBench({ name, layout, parts, wires }: Bench): string {
  const data = { bench: 1, name, ...(layout !== undefined && { layout }), parts, wires };
  return `${JSON.stringify(data, null, 2)}\n`;
}

/** Whether a bench has the parts of a layout, under the same ids: then it may be taken for that layout. */
export function hasPartsOf(bench: Pick<Bench, 'parts'>, spec: SystemSpec): boolean {
  const wired = Object.entries(spec.parts).filter(
    ([, { kind, options }]) => (findKind(kind, options ?? {})?.terminals.length ?? 0) > 0,
  );
  return (
    wired.length === Object.keys(bench.parts).length &&
    wired.every(([id, { kind }]) => bench.parts[id]?.kind === kind)
  );
}
