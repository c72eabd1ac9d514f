import { describe, expect, test } from 'vitest';
import { candidateOf } from '../../src/engine/diagnose/candidate.ts';
import { parseCallout } from '../../src/files/callout.ts';
import {
  candidatesFor,
  cardOf,
  makeCalloutFrom,
  observationOf,
  wiringOf,
} from '../../src/files/callout-pack.ts';
import { parseDoubleFaults } from '../../src/files/double-faults.ts';
import { type FaultSpec, faultOf } from '../../src/files/fault-spec.ts';
import { loadCallouts, loadDoubleFaults } from '../../src/files/site/callouts.ts';
import { loadShelf } from '../../src/files/site/course.ts';

const shelf = loadShelf();
const layout = shelf.layout('three-port');
const { system } = layout;
const { wires } = wiringOf(layout, undefined, 'a.yaml');

const yaml = (given: Record<string, string | undefined> = {}) =>
  Object.entries({
    title: 'The tank that never stops',
    system: 'three-port',
    level: '2',
    customer: 'The water is so hot that it steams.',
    house: 'A man lives here alone.',
    found: '{ supply: "on", hot-water: "on" }',
    complaints: '[{ set: { supply: "on", hot-water: "on" }, part: coil, is: warm }]',
    fault: '[{ fail: cyl-stat/welded calling }]',
    after: 'The contact had welded.',
    sources: '[common practice]',
    ...given,
  })
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${key}: ${value}`)
    .join('\n');
const parse = (given?: Record<string, string | undefined>) => parseCallout(yaml(given), 'a.yaml', 'a');

test('A callout is read as it stands, under the name of its file', () => {
  expect(parse()).toMatchObject({
    id: 'a',
    level: 2,
    found: { supply: 'on', 'hot-water': 'on' },
    complaints: [{ set: { supply: 'on', 'hot-water': 'on' }, part: 'coil', is: 'warm' }],
    fault: [{ fail: 'cyl-stat/welded calling' }],
  });
  expect(parse({ customer: '>\n  It never\n  stops.\n' }).customer).toBe('It never stops.');
});

describe('a callout is refused, with the place, when', () => {
  test.each([
    ['a key is misspelt', { titel: 'x' }, /^a\.yaml: top level: expected one of title.*did you mean "title"/],
    ['it has no words of the customer', { customer: undefined }, /customer: expected what the customer says/],
    ['its level is no level', { level: '4' }, /^a\.yaml: level: expected 1, 2 or 3, found 4/],
    ['the customer noticed nothing', { complaints: '[]' }, /complaints: expected at least one complaint/],
    [
      'somebody without tools could not see it',
      { complaints: '[{ set: {}, part: coil, is: open }]' },
      /complaints\[0\]\.is: expected one of works, idle, warm, cold, found "open"/,
    ],
    ['nothing is wrong', { fault: '[]' }, /fault: expected at least one fault/],
    [
      'three things are wrong',
      { fault: '[{ fail: a/b }, { fail: a/c }, { fail: a/d }]' },
      /fault: expected two faults at most/,
    ],
    [
      'a fault is two things at once',
      { fault: '[{ fail: a/b, link: [a/1, a/2] }]' },
      /fault\[0\]: expected a fault: one of fail, break, landed, swap, link/,
    ],
    ['a fault is nothing', { fault: '[{}]' }, /fault\[0\]: expected a fault: one of fail, break/],
    ['a wire has one end', { fault: '[{ break: [a/1] }]' }, /fault\[0\]\.break: expected a wire/],
    ['no source is named', { sources: '[]' }, /sources: expected at least one source/],
  ])('%s', (_, given, says) => {
    expect(() => parse(given as Record<string, string | undefined>)).toThrow(says);
  });
});

describe('a fault of a file is', () => {
  const made = (...specs: FaultSpec[]) => faultOf(system, wires, specs, 'a.yaml', ['fault']);

  test.each<[string, FaultSpec, string]>([
    ['a part that failed', { fail: 'spur/fuse blown' }, 'spur: fuse blown'],
    [
      'a broken wire, whichever way round',
      { break: ['strip/2', 'programmer/CH-ON'] },
      'wire: programmer/CH-ON strip/2',
    ],
    [
      'a wire landed on the next way',
      { landed: { wire: ['programmer/CH-ON', 'strip/2'], as: ['programmer/CH-ON', 'strip/3'] } },
      'landed: programmer/CH-ON strip/2 as programmer/CH-ON strip/3',
    ],
    [
      'two cores that changed places',
      { swap: ['three-port/grey', 'three-port/white'] },
      'landed: strip/3 three-port/white as strip/5 three-port/white + landed: strip/5 three-port/grey as strip/3 three-port/grey',
    ],
    ['a link too many', { link: ['strip/2', 'strip/1'] }, 'link: strip/1 strip/2'],
  ])('%s', (_, spec, id) => {
    expect(made(spec).id).toBe(id);
  });

  test('two at once, in whichever order', () => {
    const [a, b]: FaultSpec[] = [{ fail: 'spur/fuse blown' }, { link: ['strip/1', 'strip/2'] }];
    expect(made(a as FaultSpec, b as FaultSpec).id).toBe('link: strip/1 strip/2 + spur: fuse blown');
    expect(made(b as FaultSpec, a as FaultSpec)).toEqual(made(a as FaultSpec, b as FaultSpec));
  });

  test.each<[string, FaultSpec[], RegExp]>([
    [
      'a failure that the part does not have',
      [{ fail: 'spur/fuse blwn' }],
      /fault\[0\]\.fail: expected one of spur\/.*did you mean "spur\/fuse blown"/,
    ],
    ['a part that is not there', [{ fail: 'lift/stuck' }], /fault\[0\]\.fail: expected one of/],
    [
      'a wire that is not drawn',
      [{ break: ['spur/L', 'strip/9'] }],
      /fault\[0\]\.break: expected a wire of the drawing/,
    ],
    [
      'a wire landed where none of its ends is',
      [{ landed: { wire: ['spur/L', 'strip/1'], as: ['spur/N', 'strip/2'] } }],
      /fault\[0\]\.landed: expected a wire of the drawing, and one end of it on another terminal/,
    ],
    [
      'cores that cannot change places',
      [{ swap: ['strip/1', 'strip/2'] }],
      /fault\[0\]\.swap: expected two terminals/,
    ],
    [
      'a link that is no link',
      [{ link: ['strip/1', 'strip/5'] }],
      /fault\[0\]\.link: expected two neighbouring ways/,
    ],
    [
      'one contact that is welded both ways',
      [{ fail: 'room-stat/welded calling' }, { fail: 'room-stat/welded satisfied' }],
      /fault\[1\]: expected a fault that can be there beside the others/,
    ],
  ])('refused for %s', (_, specs, says) => {
    expect(() => made(...specs)).toThrow(says);
  });
});

describe('a callout made ready for the engine', () => {
  const file = parse();

  test('has its fault, its complaints and a seed of its own, the same every time', () => {
    const callout = makeCalloutFrom(layout, file);
    expect(callout).toMatchObject({
      wires,
      fault: { id: 'cyl-stat: welded calling' },
      found: { supply: 'on', 'hot-water': 'on' },
      complaints: [
        {
          settings: { supply: 'on', 'hot-water': 'on' },
          test: { kind: 'warms', part: 'coil' },
          outcome: true,
        },
      ],
    });
    expect(makeCalloutFrom(layout, file).seed).toBe(callout.seed);
    expect(makeCalloutFrom(layout, { ...file, id: 'b' }).seed).not.toBe(callout.seed);
  });

  test('works and idle are of what works, warm and cold of what takes heat', () => {
    const observe = (is: 'works' | 'idle' | 'warm' | 'cold') => observationOf({ set: {}, part: 'p', is });
    expect(observe('works')).toEqual({ test: { kind: 'works', part: 'p' }, outcome: true });
    expect(observe('idle')).toEqual({ test: { kind: 'works', part: 'p' }, outcome: false });
    expect(observe('warm')).toEqual({ test: { kind: 'warms', part: 'p' }, outcome: true });
    expect(observe('cold')).toEqual({ test: { kind: 'warms', part: 'p' }, outcome: false });
  });

  test('is about the wiring that it names, and about no other', () => {
    const other = layout.right[1]?.id ?? '';
    expect(makeCalloutFrom(layout, { ...file, wiring: other }).wires).toBe(layout.right[1]?.wires);
    expect(() => makeCalloutFrom(layout, { ...file, wiring: 'none' }, 'a.yaml')).toThrow(
      /^a\.yaml: wiring: expected one of call-on-the-switched-line/,
    );
  });

  test('shows nothing of its fault in a list', () => {
    expect(Object.keys(cardOf(layout, file)).sort()).toEqual(
      ['customer', 'family', 'id', 'level', 'system', 'title'].sort(),
    );
  });
});

describe('double faults', () => {
  const double = (faults: string) => `[{ system: three-port, faults: ${faults}, why: They do. }]`;

  test('are two, or two cores that changed places', () => {
    expect(parseDoubleFaults(double('[{ fail: a/b }, { fail: a/c }]'), 'd.yaml')).toHaveLength(1);
    expect(parseDoubleFaults(double('[{ swap: [a/1, a/2] }]'), 'd.yaml')).toHaveLength(1);
    expect(() => parseDoubleFaults(double('[{ fail: a/b }]'), 'd.yaml')).toThrow(
      '[0].faults: expected two faults, or two cores that changed places',
    );
  });

  test('count among what may be wrong with their own wiring, and with no other', () => {
    const doubles = parseDoubleFaults(
      double('[{ fail: spur/fuse blown }, { fail: boiler/live case }]'),
      'd.yaml',
    );
    const id = 'boiler: live case + spur: fuse blown';
    const ids = (wiring: string | undefined, some = doubles) =>
      candidatesFor(layout, wiring, some).map((one) => one.id);
    expect(ids(undefined)).toContain(id);
    expect(ids(layout.right[0]?.id)).toContain(id);
    expect(ids(layout.right[1]?.id)).not.toContain(id);
    expect(ids(undefined, [])).not.toContain(id);
    expect(
      candidatesFor(shelf.layout('two-two-ports'), undefined, doubles).map((one) => one.id),
    ).not.toContain(id);
  });
});

describe('of the course’s own content', () => {
  const doubles = loadDoubleFaults();

  test('every fault is one that a learner can name', () => {
    for (const file of loadCallouts()) {
      const own = shelf.layout(file.system);
      const { fault } = makeCalloutFrom(own, file);
      expect(fault.id).not.toBe(candidateOf(own.system, []).id);
      const ids = candidatesFor(own, file.wiring, doubles).map(({ id }) => id);
      expect(ids, file.id).toContain(fault.id);
    }
  });

  test('every system has a double fault', () => {
    const covered = new Set(doubles.map(({ system: id }) => id));
    expect(shelf.layoutIds.filter((id) => !covered.has(id))).toEqual([]);
  });
});
