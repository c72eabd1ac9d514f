import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { evaluate } from '../../src/engine/circuit/plain.ts';
import { buildSystem } from '../../src/engine/model/build.ts';
import { bitsOf } from '../../src/engine/model/system.ts';
import { findKind } from '../../src/engine/parts/index.ts';
import {
  type Bench,
  hasPartsOf,
  MOST_BENCH_WIRES,
  MOST_PARTS,
  parseBench,
  writeBench,
} from '../../src/files/bench.ts';
import { benchFromLink, benchToLink } from '../../src/files/bench-link.ts';
import { benchParts, benchSpec, layoutSpec } from '../../src/files/bench-spec.ts';
import { publishedSchema } from '../../src/files/published.ts';
import { librarySystems } from '../engine/support/library.ts';

const spur = { kind: 'fused-spur', name: 'Spur' };
const strip = { kind: 'strip', name: 'Strip', options: { ways: 4 } };
const bench: Bench = {
  name: 'Airing cupboard – no. 7 “top”',
  parts: {
    spur,
    strip,
    'room-thermostat': { kind: 'room-thermostat', name: 'Hall', cores: { CALL: 'blue' } },
    boiler: { kind: 'boiler', name: 'Boiler' },
    'boiler-2': { kind: 'boiler', name: 'Spare boiler' },
  },
  wires: [
    ['spur/L', 'strip/1'],
    ['strip/1', 'room-thermostat/COM'],
    ['room-thermostat/CALL', 'boiler/SL'],
  ],
};
const data = { bench: 1, ...bench };
const parse = (value: unknown) => parseBench(JSON.stringify(value), 'bench.json');

test('A bench written to a file and read again is the same bench', () => {
  expect(parseBench(writeBench(bench), 'bench.json')).toEqual(bench);
  const named = { ...bench, layout: 'three-port' };
  expect(parseBench(writeBench(named), 'bench.json')).toEqual(named);
});

test('A bench sent by link arrives whole, letters outside ASCII included, and the link is made of safe letters', () => {
  const link = benchToLink(bench);
  expect(link).toMatch(/^[\w-]+\.[\w-]+$/);
  const arrived = benchFromLink(link);
  const key = (wires: Bench['wires']) => wires.map((wire) => [...wire].sort().join(' ')).sort();
  expect(arrived).toMatchObject({ name: bench.name, parts: bench.parts });
  expect('wires' in arrived && key(arrived.wires)).toEqual(key(bench.wires));
});

test.each([
  ['cut short', (link: string) => link.slice(0, 60)],
  ['with a letter lost', (link: string) => link.slice(0, 20) + link.slice(21)],
  [
    'with the parts of another bench',
    (link: string) =>
      `${benchToLink({ ...bench, parts: { spur, strip }, wires: [] }).split('.')[0]}.${link.split('.')[1]}`,
  ],
  ['far too long', (link: string) => link.repeat(100)],
  ['that is nothing', () => ''],
])('A link %s is refused in a sentence', (_, spoil) => {
  expect(benchFromLink(spoil(benchToLink(bench)))).toMatchObject({
    problem: expect.stringMatching(/^The link .*\.$/),
  });
});

test('The same wire twice, either way round, is one wire', () => {
  const doubled = { ...data, wires: [...bench.wires, ['strip/1', 'spur/L']] };
  expect(parse(doubled).wires).toEqual(bench.wires);
});

describe('a bench that is not sound says where, and what belongs there', () => {
  const many = Object.fromEntries(
    Array.from({ length: MOST_PARTS }, (_, k) => [`pump-${k}`, { kind: 'pump', name: 'P' }]),
  );
  test.each([
    [
      'no version',
      { ...data, bench: undefined },
      'bench: expected 1, the version of the format, found nothing',
    ],
    ['another version', { ...data, bench: 2 }, 'bench: expected 1'],
    ['a misspelt key', { ...data, nmae: 'x' }, 'did you mean "name"?'],
    ['no name', { ...data, name: '' }, 'name: expected a name of at most 60 letters'],
    ['a name too long', { ...data, name: 'x'.repeat(61) }, 'name: expected a name'],
    [
      'an unknown kind',
      { ...data, parts: { ...data.parts, spare: { kind: 'pum', name: 'x' } } },
      'parts.spare.kind: expected one of',
    ],
    [
      'a strip with no way',
      { ...data, parts: { ...data.parts, strip: { ...strip, options: { ways: 0 } } } },
      'parts.strip.options.ways: expected a whole number from 1 to 24, found 0',
    ],
    [
      'half a way',
      { ...data, parts: { ...data.parts, strip: { ...strip, options: { ways: 2.5 } } } },
      'expected a whole number from 1 to 24, found 2.5',
    ],
    ['no strip', { ...data, parts: { spur } }, 'parts: expected one part of kind strip, found 0'],
    [
      'two strips',
      { ...data, parts: { ...data.parts, more: strip } },
      'parts: expected one part of kind strip, found 2',
    ],
    ['no supply', { ...data, parts: { strip }, wires: [] }, 'parts: expected a part that supplies the rest'],
    [
      'a core on no terminal',
      { ...data, parts: { ...data.parts, spur: { ...spur, cores: { X: 'blue' } } } },
      'parts.spur.cores: expected one of L, N, E, found "X"',
    ],
    [
      'a core of no colour',
      { ...data, parts: { ...data.parts, spur: { ...spur, cores: { L: 'pink' } } } },
      'parts.spur.cores.L: expected brown, blue',
    ],
    [
      'a wire to a terminal that is not there',
      { ...data, wires: [['spur/L', 'strip/5']] },
      'wires[0][1]: expected a terminal of strip',
    ],
    [
      'a wire to itself',
      { ...data, wires: [['spur/L', 'spur/L']] },
      'wires[0]: expected a wire between two different terminals',
    ],
    [
      'too many wires',
      { ...data, wires: Array(MOST_BENCH_WIRES + 1).fill(['spur/L', 'strip/1']) },
      'wires: expected at most 400 wires',
    ],
    [
      'too many parts',
      { ...data, parts: { ...data.parts, ...many } },
      `parts: expected at most ${MOST_PARTS} parts`,
    ],
    ['a list', [], 'top level: expected a bench'],
  ])('%s', (_, value, says) => {
    expect(() => parse(value)).toThrow(`bench.json: `);
    expect(() => parse(value)).toThrow(says);
  });

  test('text that is no JSON', () => {
    expect(() => parseBench('{"bench": 1,, }', 'bench.json')).toThrow('bench.json: line 1, column 13');
  });
});

test('The published schema takes what the parser takes, and refuses an unknown key and a pink core', () => {
  const stranger = z.fromJSONSchema(JSON.parse(JSON.stringify(publishedSchema('bench'))));
  expect(stranger.safeParse(data).success).toBe(true);
  expect(stranger.safeParse({ ...data, nmae: 'x' }).success).toBe(false);
  expect(stranger.safeParse({ ...data, parts: { spur: { ...spur, cores: { L: 'pink' } } } }).success).toBe(
    false,
  );
});

test('On a free bench every switch is an input of its own, named after its part, and the circuit works', () => {
  const system = buildSystem(benchSpec(bench), findKind);
  expect(system.inputs.map(({ id, label }) => [id, label])).toEqual([
    ['supply', 'Spur'],
    ['room-thermostat-call', 'Hall'],
  ]);
  const live = (settings: Record<string, string>) =>
    evaluate(system, bench.wires, { inputs: bitsOf(system, settings), place: 0 }).line[
      system.nodeOf.get('boiler/SL') ?? -1
    ];
  expect(live({ supply: 'on', 'room-thermostat-call': 'calling' })).toBe(true);
  expect(live({ supply: 'on' })).toBe(false);
});

test.each(librarySystems.map((system) => [system.id, system] as const))(
  'The parts of %s make a sound bench that is known as that layout, with and without its pipes',
  (_, { spec, references }) => {
    const parts = benchParts(spec);
    for (const { wires } of references) {
      const made = parse({ bench: 1, name: spec.title.slice(0, 60), layout: spec.id, parts, wires });
      expect(made.wires.length).toBeGreaterThan(0);
      expect(benchFromLink(benchToLink(made))).toMatchObject({ layout: spec.id });
    }
    expect(hasPartsOf({ parts }, spec)).toBe(true);
    expect(hasPartsOf({ parts: { ...parts, more: spur } }, spec)).toBe(false);
    expect(layoutSpec(spec, parts)).toEqual(spec);
  },
);
