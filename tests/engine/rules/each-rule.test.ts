import { describe, expect, test } from 'vitest';
import { bitsOf, type Settings } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { cutOutStopsHeat } from '../../../src/engine/rules/cut-out-stops-heat.ts';
import { allRules } from '../../../src/engine/rules/index.ts';
import { minimumFlow } from '../../../src/engine/rules/minimum-flow.ts';
import { shutsWithoutSupply } from '../../../src/engine/rules/shuts-without-supply.ts';
import { viewState } from '../../../src/engine/rules/view.ts';
import { judge, mistake, rewired, right, system } from '../support/flagship.ts';
import { librarySystems } from '../support/library.ts';
import { must } from '../support/must.ts';
import { placeOf } from '../support/places.ts';

/** One wiring per rule that breaks it and no other, what the sentence must name, and a state it must be shown in. */
const cases: { rule: string; wires: Wire[]; names: string[]; in?: Settings }[] = [
  {
    rule: 'no-short',
    wires: mistake('satisfied-on-neutral').wires,
    names: ['heating on', 'neutral'],
    in: { heating: 'on', room: 'satisfied' },
  },
  {
    rule: 'neutral-earth-apart',
    wires: mistake('neutral-and-earth-joined').wires,
    names: ['neutral', 'earth'],
  },
  {
    rule: 'valve-shut',
    wires: mistake('end-switch-fed-from-call').wires,
    names: ['hot water', 'two-port valve', 'three-port valve'],
    in: { heating: 'on', room: 'calling' },
  },
  {
    rule: 'runs-when-called',
    wires: mistake('satisfied-missing').wires,
    names: ['heating', 'boiler', 'three-port valve'],
    in: { heating: 'on', room: 'calling', cylinder: 'satisfied' },
  },
  {
    rule: 'off-when-not-called',
    wires: mistake('pump-on-permanent-line').wires,
    names: ['the pump runs', 'at all times'],
  },
  {
    rule: 'path-when-called',
    wires: mistake('white-and-grey-swapped').wires,
    names: ['three-port valve', 'no way is open'],
    in: { heating: 'on', room: 'calling', 'hot-water': 'on', cylinder: 'calling' },
  },
  {
    rule: 'no-uncalled-heat',
    wires: mistake('room-call-linked-to-switched-line').wires,
    names: ['heating', 'boiler', 'mid'],
    in: { 'hot-water': 'on', cylinder: 'calling' },
  },
  {
    rule: 'no-hunting',
    wires: mistake('three-port-grey-on-neutral').wires,
    names: ['never come to rest', 'three-port valve'],
    in: { heating: 'on', room: 'calling' },
  },
  {
    rule: 'earthed',
    wires: mistake('boiler-earth-missing').wires,
    names: ['boiler E', 'earth of the supply'],
  },
  {
    rule: 'permanent-line',
    wires: mistake('boiler-lines-swapped').wires,
    names: ['boiler L', 'line of the supply'],
  },
  {
    rule: 'neutral-direct',
    wires: mistake('cut-out-in-neutral').wires,
    names: ['two-port valve blue', 'neutral'],
  },
  {
    rule: 'accelerator-neutral',
    wires: mistake('room-thermostat-neutral-on-line').wires,
    names: ['Room thermostat N', 'neutral'],
  },
  {
    rule: 'crowded-terminal',
    wires: [...right, ['pump/E', 'boiler/E'], ['pump/E', 'three-port/earth']],
    names: ['pump E (3)'],
  },
  {
    rule: 'end-switch-reversed',
    wires: mistake('grey-and-orange-swapped-on-two-port').wires,
    names: ['Two-port valve orange', 'live at all times'],
  },
];

describe('each rule is broken by a wiring that breaks no other', () => {
  test.each(cases)('$rule', ({ rule, wires, names, in: settings = {} }) => {
    const { findings } = judge.judge(wires);
    expect(findings.map(({ id }) => id)).toEqual([rule]);
    const finding = must(findings[0]);
    for (const name of names) expect(finding.says).toContain(name);
    expect(finding.inputs).toMatchObject(settings);
  });

  test('every rule is broken here or by a classic mistake of the course, but for three that have a test of their own', () => {
    const classic = librarySystems.flatMap(({ mistakes }) =>
      mistakes.flatMap(({ breaks, advises }) => [...breaks, ...advises]),
    );
    // The spring keeps the first, the pipes the second, the inside of the heater's head the third.
    const ids = new Set([
      ...cases.map(({ rule }) => rule),
      ...classic,
      shutsWithoutSupply.id,
      minimumFlow.id,
      cutOutStopsHeat.id,
    ]);
    expect([...ids].sort()).toEqual(allRules.map(({ id }) => id).sort());
  });

  test('every rule names its source and helps in two steps', () => {
    for (const { source, function: does, compare } of allRules) {
      expect(source.length).toBeGreaterThan(9);
      expect(does).toMatch(/\.$/);
      expect(compare).toMatch(/[.?]$/);
    }
  });
});

describe('the valve in the coil flow shuts when the supply is lost', () => {
  // No wiring of a spring-return valve can break this, so the rule is tried on states that do not arise.
  const state = (supply: string, position: string) =>
    viewState(system, right, {
      inputs: bitsOf(system, { supply }),
      place: placeOf(system, { 'two-port': position }),
    });

  test('a valve standing open or part open with the supply off breaks it', () => {
    expect(shutsWithoutSupply.broken(state('off', 'open'))).toBe(true);
    expect(shutsWithoutSupply.broken(state('off', 'part open'))).toBe(true);
  });

  test('a shut valve does not, and with the supply on the rule says nothing', () => {
    expect(shutsWithoutSupply.broken(state('off', 'shut'))).toBe(false);
    expect(shutsWithoutSupply.broken(state('on', 'open'))).toBe(false);
  });
});

describe('neutrals, earths and permanent lines, one by one', () => {
  const found = (wires: Wire[], rule: string) =>
    judge.judge(wires).findings.find(({ id }) => id === rule)?.terminals;

  test.each([
    ['programmer/N', 'strip/11'],
    ['three-port/blue', 'strip/11'],
    ['two-port/blue', 'strip/10'],
    ['pump/N', 'strip/10'],
    ['boiler/N', 'strip/10'],
  ])('without its wire %s is named as having no neutral', (terminal, strip) => {
    expect(found(rewired(right, [[terminal, strip]]), 'neutral-direct')).toEqual([terminal]);
  });

  test.each([['three-port/earth'], ['two-port/earth'], ['pump/E'], ['boiler/E']])(
    'without its wire %s is named as having no earth',
    (terminal) => {
      expect(found(rewired(right, [[terminal, 'strip/12']]), 'earthed')).toEqual([terminal]);
    },
  );

  test.each([['programmer/L'], ['boiler/L']])(
    'without its wire %s is named as having no permanent line',
    (terminal) => {
      expect(found(rewired(right, [[terminal, 'strip/1']]), 'permanent-line')).toEqual([terminal]);
    },
  );

  test('a permanent line through a contact is none', () => {
    const wires = rewired(right, [['boiler/L', 'strip/1']], [['boiler/L', 'strip/4']]);
    expect(found(wires, 'permanent-line')).toEqual(['boiler/L']);
  });
});
