import { describe, expect, test } from 'vitest';
import { burn, feel, startControls } from '../../../../src/engine/faults/day/controls.ts';
import { makeElectrics, PASSING_SHARE } from '../../../../src/engine/faults/day/electrics.ts';
import {
  drawnAt,
  drawsBeginning,
  isOn,
  secondsOfChange,
} from '../../../../src/engine/faults/day/schedule.ts';
import { inputsFor, sensesOf } from '../../../../src/engine/faults/day/senses.ts';
import { ORDINARY_DAY } from '../../../../src/engine/faults/day/settings.ts';
import { nextArrival, travel, valvesAt } from '../../../../src/engine/faults/day/valves.ts';
import { allFailures, failureId } from '../../../../src/engine/faults/failure.ts';
import { bitsOf } from '../../../../src/engine/model/system.ts';
import { right, system } from '../../support/flagship.ts';

const HOUR = 3600;

describe('the clock', () => {
  test('a stretch is on from its first second until just before its last, every day', () => {
    const on = [5.99, 6, 7, 8.49, 8.5, 30, 32.5].map((hour) => isOn([[6, 8.5]], Math.round(hour * HOUR)));
    expect(on).toEqual([false, true, true, true, false, true, false]);
  });

  test('a stretch may run past midnight', () => {
    expect([21, 23, 25, 27].map((hour) => isOn([[22, 26]], hour * HOUR))).toEqual([false, true, true, false]);
  });

  test('a draw-off of 45 litres at 10 litres a minute lasts four and a half minutes', () => {
    const settings = { ...ORDINARY_DAY, draws: [{ at: 7, litres: 45 }], drawLitresPerMinute: 10 };
    const at = (minutes: number) => drawnAt(settings, 7 * HOUR + minutes * 60);
    expect([at(-0.1), at(0), at(4.4), at(4.5)]).toEqual([0, 1 / 6, 1 / 6, 0]);
    expect(drawsBeginning(settings, 7 * HOUR)).toBe(45);
  });

  test('every change of the clock is a stop, in order and once', () => {
    const stops = secondsOfChange({ ...ORDINARY_DAY, hours: 48, failAt: 5 });
    expect(stops).toEqual([...new Set(stops)].sort((a, b) => a - b));
    expect(stops[0]).toBe(0);
    for (const hour of [5, 6, 9, 15, 30, 45.5]) expect(stops).toContain(hour * HOUR);
    expect(stops.every((second) => second < 48 * HOUR)).toBe(true);
  });
});

test('settings of the inputs follow what the day knows', () => {
  const now = { supply: true, hotWater: true, heating: false, room: true, store: false, cutOut: true };
  const settings = { supply: 'on', 'hot-water': 'on', room: 'calling', 'cut-out': 'tripped' };
  expect(inputsFor(sensesOf(system), now)).toBe(bitsOf(system, settings));
});

describe('valves', () => {
  const strokes = { motorSeconds: 15, springSeconds: 7 };
  const twoPort = system.movers.findIndex(({ part }) => system.parts[part]?.id === 'two-port');
  const ways = (way: number) => system.movers.map((_, m) => (m === twoPort ? way : 0));

  // Common practice: a motor takes 10 to 20 s, a spring 5 to 10 s.
  test('a two-port opens in its motor’s time and shuts in its spring’s, in two moves each', () => {
    const valves = valvesAt(system, 0);
    let seconds = 0;
    for (const [way, moves] of [
      [1, 2],
      [-1, 2],
    ] as const) {
      for (let move = 0; move < moves; move++) {
        const step = nextArrival(system, valves, ways(way), strokes);
        travel(system, valves, ways(way), strokes, step);
        seconds += step;
      }
      expect(seconds).toBeCloseTo(way > 0 ? 15 : 22, 9);
    }
    expect(valves.place).toBe(0);
  });

  test('a move cut short goes back from where it stood, and its switches never changed over', () => {
    const valves = valvesAt(system, 0);
    travel(system, valves, ways(1), strokes, 7.5);
    const partOpen = valves.place;
    travel(system, valves, ways(1), strokes, 3.75);
    expect(valves.place).toBe(partOpen);
    // Half a move beyond part open: one and a half moves of 3.5 s back to shut.
    expect(nextArrival(system, valves, ways(-1), strokes)).toBeCloseTo(5.25, 9);
  });

  test('with nothing on the move there is no arrival to wait for', () => {
    expect(nextArrival(system, valvesAt(system, 4), ways(0), strokes)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('controls', () => {
  const settings = { ...ORDINARY_DAY, thermostat: 60, differential: 8, cutOut: 80, startStore: 50 };
  test('the thermostat is satisfied at its setting and calls again only its differential lower', () => {
    const controls = startControls(settings);
    const calls = [50, 59.9, 60, 55, 52.1, 52, 59].map((store) => {
      feel(controls, settings, store, 30, () => {});
      return controls.calling;
    });
    expect(calls).toEqual([true, true, false, false, false, true, true]);
  });

  test('the cut-out stays tripped when the store is cold again', () => {
    const controls = startControls(settings);
    const told: string[] = [];
    for (const store of [79.9, 80, 20]) feel(controls, settings, store, 30, (change) => told.push(change));
    expect({ tripped: controls.tripped, trips: told.filter((change) => change === 'trips').length }).toEqual({
      tripped: true,
      trips: 1,
    });
  });

  test('the burner turns down across its band, goes out at the top and lights at the bottom', () => {
    const controls = startControls(settings);
    const power = [70, 81, 84.9, 85, 80, 79].map((flow) => burn(controls, settings, true, true, flow));
    expect(power.map((watts) => Math.round(watts))).toEqual([20_000, 13_333, 4000, 0, 0, 20_000]);
    expect(burn(controls, settings, false, true, 60)).toBe(0);
    expect(burn(controls, settings, true, false, 95)).toBe(20_000);
  });
});

test('a valve that only passes lets a fifth of the heat by; with no pump running nothing flows', () => {
  const passing = allFailures(system, right).filter(
    (failure) => failureId(system, failure) === 'three-port: passing',
  );
  const inputs = bitsOf(system, { supply: 'on', 'hot-water': 'on', cylinder: 'calling' });
  const open = Array.from({ length: system.places }, (_, place) => place);
  const actions = open.map((place) => makeElectrics(system, right, passing)(inputs, place));
  const shares = new Set(actions.filter(({ pumps }) => pumps).map(({ radiators }) => radiators));
  expect(shares).toEqual(new Set([PASSING_SHARE, 1]));
  for (const action of actions.filter(({ pumps }) => !pumps))
    expect([action.coil, action.radiators]).toEqual([0, 0]);
});
