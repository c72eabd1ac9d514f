import { describe, expect, it } from 'vitest';
import { loadShelf } from '../../src/files/site/course.ts';
import { loadStages } from '../../src/files/site/stage.ts';
import { LONGEST_CAPTION, parseStage } from '../../src/files/stage.ts';
import { stageTroubles } from '../../src/files/stage-fit.ts';

const { layout } = loadShelf();
const script = (steps: string, more = '') => `title: A script\nsystem: three-port\n${more}steps:\n${steps}`;
const parse = (steps: string, more?: string) => parseStage(script(steps, more), 'mine.yaml');

describe('a stage script', () => {
  it('is read with its steps in order, its captions on one line, and the strip where no drawing is named', () => {
    const read = parse(
      '  - says: >-\n      One\n      two.\n    set: { supply: "on" }\n  - says: Three.\n    view: pipework\n',
    );
    expect(read.view).toEqual(['strip']);
    expect(read.steps).toEqual([
      { says: 'One two.', set: { supply: 'on' } },
      { says: 'Three.', view: ['pipework'] },
    ]);
  });

  it('takes wires as a landing map', () => {
    const read = parse('  - says: One.\n', 'wires: { strip/1: [spur/L, boiler/L] }\n');
    expect(read.wires).toEqual([
      ['spur/L', 'strip/1'],
      ['boiler/L', 'strip/1'],
    ]);
  });

  it.each<[string, string, string, RegExp]>([
    ['a key that is misspelt', '  - say: One.\n', '', /mine\.yaml: steps\[0\]: expected .*says.*found "say"/],
    [
      'a step without a caption',
      '  - set: { supply: "on" }\n',
      '',
      /steps\[0\]\.says: expected a caption, found nothing/,
    ],
    [
      'a caption that three lines do not hold',
      `  - says: ${'a'.repeat(LONGEST_CAPTION + 1)}\n`,
      '',
      /steps\[0\]\.says: expected a caption of at most 180 letters/,
    ],
    [
      'a drawing that is none',
      '  - says: One.\n',
      'view: wires\n',
      /view: expected one of strip, circuit, pipework/,
    ],
    [
      'three drawings',
      '  - says: One.\n',
      'view: [strip, circuit, pipework]\n',
      /view: expected one of strip/,
    ],
    [
      'a wiring and wires',
      '  - says: One.\n',
      'wiring: boiler-on-a-test-link\nwires: { strip/1: [spur/L] }\n',
      /expected a wiring or wires, not both/,
    ],
    [
      'on without quotes',
      '  - says: One.\n    set: { supply: true }\n',
      '',
      /steps\[0\]\.set\.supply: expected a setting, in quotes/,
    ],
    ['no steps', '  []\n', '', /steps: expected at least one step/],
  ])('is refused with %s', (_, steps, more, says) => {
    expect(() => parse(steps, more)).toThrow(says);
  });
});

describe('a stage script on its layout', () => {
  const troubles = (steps: string, more?: string) =>
    stageTroubles(layout('three-port'), parse(steps, more), 'mine.yaml').map(({ message }) => message);

  it('has nothing against what the engine finds', () => {
    expect(
      troubles(
        '  - says: One.\n    set: { supply: "on", hot-water: "on", cylinder: calling }\n    expect: { fires: true, heats: [coil] }\n',
      ),
    ).toEqual([]);
  });

  it.each<[string, string, RegExp]>([
    [
      'a caption that is not so',
      '  - says: One.\n    expect: { fires: true }\n',
      /steps\[0\]\.expect: .* found that the boiler fires: false/,
    ],
    [
      'a switch that is not there',
      '  - says: One.\n    set: { water: "on" }\n',
      /steps\[0\]\.set: expected a switch of the layout .*found "water"/,
    ],
    [
      'a setting that is not there',
      '  - says: One.\n    set: { room: cold }\n',
      /steps\[0\]\.set: expected a setting/,
    ],
    [
      'a call that is not there',
      '  - says: One.\n    follow: bath\n',
      /steps\[0\]\.follow: expected a call .*water, heating.*found "bath"/,
    ],
    [
      'a failure that is not there',
      '  - says: One.\n    fail: [pump/sad]\n',
      /steps\[0\]\.fail: expected a failure/,
    ],
    [
      'a part that is not there',
      '  - says: One.\n    spot: [cut-out]\n',
      /steps\[0\]\.spot: expected a part .*found "cut-out"/,
    ],
    [
      'a terminal that is not there',
      '  - says: One.\n    spot: [pump/SL]\n',
      /steps\[0\]\.spot: expected a terminal .*pump\/L.*found "pump\/SL"/,
    ],
    [
      'a part in what it expects',
      '  - says: One.\n    expect: { works: [fan] }\n',
      /steps\[0\]\.expect: expected a part/,
    ],
  ])('names %s', (_, steps, says) => {
    expect(troubles(steps)).toEqual([expect.stringMatching(says)]);
  });

  it('names a wiring and wires that are not the layout’s', () => {
    expect(troubles('  - says: One.\n', 'wiring: mine\n')).toEqual([
      expect.stringMatching(/: wiring: .*found "mine"/),
    ]);
    expect(troubles('  - says: One.\n', 'wires: { strip/99: [spur/L] }\n')).toEqual([
      expect.stringMatching(/: wires.*strip\/99/),
    ]);
  });

  it('names every trouble, not the first alone', () => {
    expect(
      troubles('  - says: One.\n    expect: { fires: true }\n  - says: Two.\n    spot: [fan]\n'),
    ).toHaveLength(2);
  });

  it('names pipework that cannot be drawn', () => {
    const read = parse('  - says: One.\n', 'view: [strip, pipework]\n');
    const [trouble] = stageTroubles(layout('three-port'), read, 'mine.yaml', () => false);
    expect(trouble?.message).toMatch(/view: .*pipework of this layout cannot be drawn/);
  });
});

it('There are at least four scripts of our own, on unvented cylinders, three-ports and two two-ports', () => {
  const scripts = loadStages();
  expect(scripts.length).toBeGreaterThanOrEqual(4);
  expect(new Set(scripts.map(({ system }) => system))).toEqual(
    new Set(['unvented-three-port', 'three-port', 'two-two-ports']),
  );
  // A caption that nothing proves is only an opinion.
  for (const { id, steps } of scripts)
    expect(`${id}: ${steps.filter((step) => step.expect).length} of ${steps.length}`).toBe(
      `${id}: ${steps.length} of ${steps.length}`,
    );
});
