import { describe, expect, test } from 'vitest';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { oneTwoPort, oneTwoPortRight } from '../../fixtures/one-two-port.ts';
import { twoTwoPorts, twoTwoPortsRight } from '../../fixtures/two-two-ports.ts';
import { rewired } from '../support/flagship.ts';

const verdict = (system: System, wires: Wire[]) => {
  const { accepted, findings } = makeJudge(system).judge(wires);
  return {
    accepted,
    broken: findings
      .filter(({ severity }) => severity !== 'advice')
      .map(({ id }) => id)
      .sort(),
  };
};

// The wirings are common practice (facts: two two-ports with the cut-out in the live of the hot water valve).
describe('two two-ports, a system told only as data', () => {
  const judged = (lift: Wire[], land: Wire[] = []) =>
    verdict(twoTwoPorts, rewired(twoTwoPortsRight, lift, land));

  test('its right wiring is accepted', () => {
    expect(judged([])).toEqual({ accepted: true, broken: [] });
  });

  test('the cut-out bypassed leaves the valve open and the boiler on after a trip', () => {
    expect(judged([], [['cut-out/IN', 'cut-out/OUT']]).broken).toEqual(['off-when-not-called', 'valve-shut']);
  });

  test('an end switch fed from the call holds its own valve open while the other valve is open', () => {
    const lift: Wire[] = [
      ['boiler/L', 'water-valve/grey'],
      ['water-valve/grey', 'heating-valve/grey'],
    ];
    const land: Wire[] = [
      ['boiler/L', 'heating-valve/grey'],
      ['water-valve/grey', 'water-valve/brown'],
    ];
    expect(judged(lift, land).broken).toEqual(['valve-shut']);
  });

  test('one end switch not joined to the boiler leaves its own call without fire', () => {
    const land: Wire[] = [];
    expect(judged([['water-valve/orange', 'heating-valve/orange']], land).broken).toEqual([
      'runs-when-called',
    ]);
  });

  test('the two browns swapped open each valve for the other call', () => {
    const lift: Wire[] = [
      ['cut-out/OUT', 'water-valve/brown'],
      ['room-stat/CALL', 'heating-valve/brown'],
    ];
    const land: Wire[] = [
      ['cut-out/OUT', 'heating-valve/brown'],
      ['room-stat/CALL', 'water-valve/brown'],
    ];
    expect(judged(lift, land).broken).toEqual(['no-uncalled-heat', 'path-when-called', 'valve-shut']);
  });

  test('the words name its own parts', () => {
    const wires = rewired(twoTwoPortsRight, [], [['cut-out/IN', 'cut-out/OUT']]);
    const [finding] = makeJudge(twoTwoPorts).judge(wires).findings;
    expect(finding?.says).toContain('hot water valve');
  });
});

describe('a cylinder alone, with fewer settings than a word has bits', () => {
  test('its right wiring is accepted in its eight settings', () => {
    expect(makeJudge(oneTwoPort).judge(oneTwoPortRight)).toMatchObject({
      accepted: true,
      states: 8,
      findings: [],
    });
  });

  test('with the motor fed before the thermostat it is rejected', () => {
    const wires = rewired(oneTwoPortRight, [['cut-out/OUT', 'valve/brown']], [['spur/L', 'valve/brown']]);
    expect(verdict(oneTwoPort, wires)).toEqual({
      accepted: false,
      broken: ['off-when-not-called', 'valve-shut'],
    });
  });
});
