import { describe, expect, test } from 'vitest';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { bitsOf, partNamed, positionOf, type Settings } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { allRules, stateRules } from '../../../src/engine/rules/index.ts';
import { viewState } from '../../../src/engine/rules/view.ts';
import {
  advice,
  broken,
  judge,
  mistake,
  mistakes,
  reference,
  references,
  rewired,
  right,
  system,
} from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { look, placeOf, restsAfter } from '../support/places.ts';

// Each title says a sentence of the contract on which held cases depend.

const all = { supply: 'on', 'hot-water': 'on', heating: 'on', room: 'calling', cylinder: 'calling' };
const twoPort = partNamed(system, 'two-port');
const view = (wires: readonly Wire[], settings: Settings, place: number) =>
  viewState(system, wires, { inputs: bitsOf(system, settings), place });

/** Every resting state with these settings, of a wiring used for a while: entered from every place it can rest in. */
function restsWith(wires: readonly Wire[], settings: Settings) {
  const bits = bitsOf(system, settings);
  return [...judgePlain(system, wires).judged]
    .filter((key) => Math.floor(key / system.places) === bits)
    .map((key) => view(wires, settings, key % system.places));
}

describe('what is judged', { timeout: 60_000 }, () => {
  test('the states are every setting entered from every place the valves can rest in', () => {
    for (const { wires } of references) {
      const rests = new Set([0]);
      const states = new Set<number>();
      for (const from of rests) {
        for (let bits = 0; bits < 64; bits++) {
          const settings = Object.fromEntries(
            system.inputs.map(({ id, settings }, k) => [id, must(settings[(bits >> k) & 1])]),
          );
          for (const place of restsAfter(system, wires, settings, from)) {
            rests.add(place);
            states.add(bits * system.places + place);
          }
        }
      }
      expect(judge.judge(wires).states).toBe(states.size);
    }
  });

  test('a bare strip is judged in its 64 cold settings', () => {
    expect(judge.judge([])).toMatchObject({ accepted: false, states: 64 });
  });

  test('the three-port stands where its past has left it: one setting is judged in more than one place', () => {
    const places = restsWith(right, { supply: 'on' }).map(({ config }) =>
      positionOf(system, partNamed(system, 'three-port'), config.place),
    );
    expect(places.sort()).toEqual(['A', 'B']);
  });
});

describe('what an accepted wiring does', { timeout: 60_000 }, () => {
  test.each(references)('$id is accepted without advice', ({ wires }) => {
    expect([broken(wires), advice(wires)]).toEqual([[], []]);
  });

  test.each(mistakes)('$id breaks exactly the rules it names', ({ wires, breaks, advises }) => {
    expect([broken(wires), advice(wires)]).toEqual([breaks.toSorted(), advises.toSorted()]);
  });

  test('boiler and pump run for water, for heating and for both, and at no other time', () => {
    for (const view of restsWith(right, all)) expect([view.fires, view.pumps]).toEqual([true, true]);
    for (const view of restsWith(right, { ...all, room: 'satisfied' }))
      expect([view.fires, view.pumps]).toEqual([true, true]);
    for (const view of restsWith(right, { ...all, cylinder: 'satisfied' }))
      expect([view.fires, view.pumps]).toEqual([true, true]);
    for (const view of restsWith(right, { ...all, cylinder: 'satisfied', room: 'satisfied' }))
      expect([view.fires, view.pumps]).toEqual([false, false]);
  });

  test('while the cut-out is tripped and hot water is on, heating need not run', () => {
    const tripped = restsWith(right, { ...all, 'cut-out': 'tripped' });
    expect(tripped.length).toBeGreaterThan(0);
    expect(tripped.some(({ fires }) => fires)).toBe(false);
  });

  test('while the cut-out is tripped and hot water is on, heating may run', () => {
    const tripped = restsWith(right, { ...all, cylinder: 'satisfied', 'cut-out': 'tripped' });
    expect(tripped.some(({ fires }) => fires)).toBe(true);
  });

  test('while the cut-out is tripped and hot water is off, heating must run', () => {
    const found = judge
      .judge(mistake('cut-out-in-boiler-line').wires)
      .findings.find(({ id }) => id === 'runs-when-called');
    expect(must(found).inputs).toMatchObject({
      'cut-out': 'tripped',
      'hot-water': 'off',
      heating: 'on',
      room: 'calling',
    });
  });

  test('the exemption does not let the boiler fire for water while the cut-out is tripped', () => {
    expect(broken(mistake('cut-out-bypassed').wires)).toContain('off-when-not-called');
  });

  test('an open two-port with no call for water is a danger even with the boiler off', () => {
    const motorAlwaysLive = judge.judge(mistake('brown-and-grey-swapped-on-two-port').wires).findings[0];
    expect(motorAlwaysLive).toMatchObject({
      id: 'valve-shut',
      severity: 'danger',
      steps: [{ supply: 'on' }],
    });
  });

  test('with the supply off nothing works and the two-port shuts, from wherever it stands', () => {
    for (const { wires } of [...references, ...mistakes]) {
      for (const position of ['shut', 'part open', 'open']) {
        const rests = restsAfter(
          system,
          wires,
          { ...all, supply: 'off' },
          placeOf(system, { 'two-port': position, 'three-port': 'A' }),
        );
        expect(rests).toEqual([0]);
      }
    }
  });
});

describe('every order of movement counts', () => {
  test('with the end switch fed from the call, the two-port shuts or stays open as the valves please', () => {
    const start = placeOf(system, { 'three-port': 'mid', 'two-port': 'open' });
    const rests = restsAfter(
      system,
      mistake('end-switch-fed-from-call').wires,
      { ...all, cylinder: 'satisfied' },
      start,
    );
    expect(rests.map((place) => positionOf(system, twoPort, place)).sort()).toEqual(['open', 'shut']);
  });

  test('with the end switch on the permanent line it always shuts', () => {
    const start = placeOf(system, { 'three-port': 'mid', 'two-port': 'open' });
    const rests = restsAfter(system, right, { ...all, cylinder: 'satisfied' }, start);
    expect(rests.map((place) => positionOf(system, twoPort, place))).toEqual(['shut']);
  });

  test('a short that lasts only while a valve moves is a danger', () => {
    // The end switch joins hot-water-off to neutral: made only from the moment of switching off until the valve lets go.
    const wires = rewired(
      right,
      [
        ['two-port/grey', 'strip/1'],
        ['two-port/orange', 'strip/8'],
      ],
      [
        ['two-port/grey', 'programmer/HW-OFF'],
        ['two-port/orange', 'strip/11'],
      ],
    );
    const { judged, broken: states } = judgePlain(system, wires);
    const shorted = [...must(states.get('no-short'))];
    expect(shorted.length).toBeGreaterThan(0);
    expect(shorted.filter((key) => judged.has(key))).toEqual([]);
    expect(broken(wires)).toContain('no-short');
  });

  test('a valve that never comes to rest is a fault', () => {
    const { wires } = mistake('three-port-grey-on-neutral');
    const on = { supply: 'on', heating: 'on', room: 'calling' };
    expect(restsAfter(system, wires, on, 0)).toEqual([]);
    expect(broken(wires)).toEqual(['no-hunting']);
  });

  test('a valve that may take its time but can come to rest does not hunt', () => {
    for (const { wires } of references)
      expect(must(judgePlain(system, wires).broken.get('no-hunting')).size).toBe(0);
  });
});

describe('what counts as joined', () => {
  test('a contact in a neutral is a fault although everything works', () => {
    expect(broken(mistake('cut-out-in-neutral').wires)).toEqual(['neutral-direct']);
  });

  test('a contact in an earth is no earth', () => {
    const base = mistake('cut-out-left-out').wires.filter(
      (wire) => !wire.some((end) => end.startsWith('cut-out/')),
    );
    const wires = rewired(
      base,
      [['boiler/E', 'strip/12']],
      [
        ['boiler/E', 'cut-out/IN'],
        ['cut-out/OUT', 'strip/12'],
      ],
    );
    expect(broken(wires)).toContain('earthed');
  });

  test('a part is not fed through another load', () => {
    // The pump in series with the programmer's clock: line on one side, only a load on the other.
    const wires = rewired(right, [['pump/N', 'strip/10']], [['pump/N', 'strip/9']]);
    expect(broken(wires)).toEqual(['neutral-direct', 'runs-when-called']);
  });

  test("the room thermostat's neutral missing or astray is advice", () => {
    expect([
      broken(mistake('room-thermostat-neutral-on-line').wires),
      advice(mistake('room-thermostat-neutral-on-line').wires),
    ]).toEqual([[], ['accelerator-neutral']]);
    const missing = rewired(right, [['room-stat/N', 'strip/11']]);
    expect([broken(missing), advice(missing)]).toEqual([[], ['accelerator-neutral']]);
  });

  test("the room thermostat's neutral is a danger when it makes a short", () => {
    expect(broken([...right, ['room-stat/N', 'room-stat/CALL']])).toContain('no-short');
  });

  test('any number of wires may meet in a terminal: too many is advice', () => {
    const wires = rewired(right, [['strip/10', 'strip/11']], []).map(
      ([a, b]): Wire => [a === 'strip/10' ? 'strip/11' : a, b],
    );
    expect([broken(wires), advice(wires)]).toEqual([[], ['crowded-terminal']]);
    expect(judge.judge(wires).accepted).toBe(true);
  });

  test('live is what the contacts join, whatever direction was meant: an end switch works either way round', () => {
    const { wires } = mistake('grey-and-orange-swapped-on-two-port');
    expect([broken(wires), advice(wires)]).toEqual([[], ['end-switch-reversed']]);
    expect(look(system, wires, { supply: 'on' }, 0).isLive('two-port/orange')).toBe(true);
  });
});

describe('the verdict', () => {
  test('the findings come gravest first, and each names a rule that exists', () => {
    const order = ['danger', 'fault', 'advice'];
    for (const { wires } of mistakes) {
      const { findings } = judge.judge(wires);
      const grades = findings.map(({ severity }) => order.indexOf(severity));
      expect(grades).toEqual(grades.toSorted());
      for (const { id } of findings) expect(allRules.map((rule) => rule.id)).toContain(id);
    }
  });

  test('advice alone never rejects, a fault or a danger always does', () => {
    for (const { wires, breaks } of mistakes) expect(judge.judge(wires).accepted).toBe(breaks.length === 0);
  });

  test('the terminals are the path that carried the voltage', () => {
    const [finding] = judge.judge(mistake('pump-on-permanent-line').wires).findings;
    expect(must(finding).terminals).toEqual(['spur/L', 'strip/1', 'pump/L']);
  });

  test('the terminals are the place where the voltage stops', () => {
    const [finding] = judge.judge(mistake('satisfied-missing').wires).findings;
    expect(must(finding).inputs).toMatchObject({
      heating: 'on',
      room: 'calling',
      'hot-water': 'on',
      cylinder: 'satisfied',
    });
    expect(must(finding).terminals).toContain('three-port/white');
  });

  test('every finding has words, and every terminal in it exists', () => {
    for (const { wires } of mistakes) {
      for (const { says, terminals } of judge.judge(wires).findings) {
        expect(says).toMatch(/^[A-Z].*\.$/);
        for (const terminal of terminals)
          expect(must(system.nodeOf.get(terminal), terminal)).toBeLessThan(system.terminals);
      }
    }
  });

  test('the cut-out ahead of the thermostat is judged in its own states', () => {
    expect(judge.judge(reference('cut-out-before-thermostat')).states).not.toBe(judge.judge(right).states);
  });

  test('no rule about states is named twice', () => {
    expect(new Set(stateRules.map(({ id }) => id)).size).toBe(stateRules.length);
  });
});
