import { describe, expect, it } from 'vitest';
import { checkCallouts } from '../../src/cli/callout-check.ts';
import { type DoubleFault, parseDoubleFaults } from '../../src/files/double-faults.ts';
import { loadShelf } from '../../src/files/site/course.ts';

const { layout } = loadShelf();
const doublesFile = 'content/double-faults.yaml';
const doubles = parseDoubleFaults(
  '[{ system: combi-one-zone, faults: [{ fail: timer/on welded }, { fail: room-stat/welded calling }], why: They do. }]',
  doublesFile,
);

const sound = {
  title: 'A cold house',
  system: 'combi-one-zone',
  level: '2',
  customer: 'We are cold in here.',
  house: 'A small house.',
  found: '{ supply: "on", heating: "on", room: calling }',
  complaints:
    '[{ set: { supply: "on", heating: "on", room: calling }, part: radiators, is: cold }, { set: { supply: "on", heating: "on" }, part: boiler, is: idle }]',
  fault: '[{ fail: room-stat/welded satisfied }]',
  after: 'The contact had welded.',
  sources: '[common practice]',
};
const yaml = (given: Partial<typeof sound>) =>
  Object.entries({ ...sound, ...given })
    .map(([key, value]) => `${key}: ${value}`)
    .join('\n');

/** What the check says of callouts that differ from a sound one. */
const says = (given: Partial<typeof sound>[], some: readonly DoubleFault[] = doubles) =>
  checkCallouts({
    files: given.map((one, k) => ({ name: `content/callouts/c${k}.yaml`, text: yaml(one) })),
    doubles: some,
    doublesFile,
    layoutIds: ['combi-one-zone'],
    layout,
  }).map(({ message }) => message);

describe('the check of callouts', () => {
  it('has nothing against a sound one', () => {
    expect(says([{}])).toEqual([]);
  });

  it.each<[string, Partial<typeof sound>, RegExp]>([
    ['a system that is not there', { system: 'combi' }, /c0\.yaml: system: expected one of combi-one-zone/],
    [
      'a switch that the system does not have',
      { found: '{ supply: "on", hot-water: "on" }' },
      /c0\.yaml: found: expected one of supply, heating, room, found "hot-water"/,
    ],
    [
      'a setting that the switch does not have',
      { found: '{ supply: "on", room: warm }' },
      /c0\.yaml: found\.room: expected one of satisfied, calling, found "warm"/,
    ],
    [
      'a part that does not get warm',
      { complaints: '[{ set: { supply: "on" }, part: boiler, is: cold }]' },
      /c0\.yaml: complaints\[0\]\.part: expected one of radiators, found "boiler"/,
    ],
    [
      'a complaint that the fault does not bring about',
      { complaints: '[{ set: { supply: "on", heating: "on", room: calling }, part: radiators, is: warm }]' },
      /c0\.yaml: complaints\[0\]: expected that radiators is warm with the fault, found that it is not/,
    ],
    [
      'complaints that a sound system would show as well',
      { complaints: '[{ set: { supply: "on" }, part: radiators, is: cold }]' },
      /c0\.yaml: complaints: expected one that a sound system does not show/,
    ],
    [
      'a double fault that nobody can name',
      { fault: '[{ fail: room-stat/welded satisfied }, { fail: timer/on welded }]' },
      /c0\.yaml: fault: expected a single fault, or a double one that stands in content\/double-faults\.yaml/,
    ],
    [
      'another level than the engine finds',
      { level: '3' },
      /c0\.yaml: level: expected \d, for \d+ faults share/,
    ],
    ['a key of its own', { title: 'A\ncolour: red' }, /c0\.yaml: top level: expected one of title/],
  ])('names %s', (_, given, message) => {
    const said = says([given]);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(message);
  });

  it('names a title that two callouts have', () => {
    expect(says([{}, {}])).toEqual([
      'content/callouts/c1.yaml: title: expected a title that no other callout has, found that of content/callouts/c0.yaml',
    ]);
  });

  it('names a system without a double fault, and one that stands there twice', () => {
    expect(says([], [])).toEqual([
      `${doublesFile}: top level: expected a double fault of combi-one-zone, found none`,
    ]);
    expect(says([], [...doubles, ...doubles])).toEqual([
      `${doublesFile}: [1].faults: expected a double fault of its own, found one that is there already`,
    ]);
  });

  it('names a double fault whose parts are not there', () => {
    const [first] = doubles;
    const lost = { ...(first as DoubleFault), faults: [{ fail: 'lift/stuck' }, { fail: 'timer/on welded' }] };
    expect(says([], [...doubles, lost]).join()).toMatch(/\[0?1?\]\.faults\[0\]\.fail: expected one of/);
  });
});
