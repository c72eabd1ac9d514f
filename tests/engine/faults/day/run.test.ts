import { describe, expect, test } from 'vitest';
import { ORDINARY_DAY } from '../../../../src/engine/faults/day/settings.ts';
import { mistake, references, right } from '../../support/flagship.ts';
import { must } from '../../support/must.ts';
import { day, first, samplesFrom, standsAt } from './days.ts';

const { thermostat, cutOut, flow, flowBand, reliefOpens, boilerLimit } = ORDINARY_DAY;
const welded = 'cyl-stat: welded calling';
const tripless = 'cut-out: failed closed';
const summer = { heating: [] };

describe('a day on which nothing fails', () => {
  test.each(references)('$id keeps the store at its thermostat, and no safety device moves', ({ wires }) => {
    const run = day(wires);
    // A step may end a little past the setting, and water still moves until the pump stops.
    expect(run.hottest).toBeGreaterThanOrEqual(thermostat);
    expect(run.hottest).toBeLessThan(thermostat + 0.5);
    expect(new Set(run.events.map(({ kind }) => kind))).toEqual(
      new Set(['programmer', 'draw', 'thermostat']),
    );
  });

  test('the flow stays within the band of the boiler’s own thermostat', () => {
    for (const sample of day(right).samples) expect(sample.flow).toBeLessThan(flow + flowBand / 2 + 0.5);
  });

  test('the boiler is out and the two-port shut while hot water and heating are both off', () => {
    const night = day(right).samples.filter(({ seconds }) => seconds < 6 * 3600 || seconds > 22.6 * 3600);
    expect(night.length).toBeGreaterThan(400);
    for (const sample of night) {
      expect({ boiler: sample.boiler, pump: sample.pump, valve: standsAt('two-port', sample) }).toEqual({
        boiler: false,
        pump: false,
        valve: 'shut',
      });
    }
  });
});

describe('failures in the right wiring', () => {
  test('a welded thermostat: the cut-out trips, the two-port shuts, and the store gets no hotter', () => {
    const run = day(right, [welded]);
    const trip = must(first(run, 'cut-out'));
    expect(trip.says).toContain('the cut-out trips');
    expect(run.hottest).toBeLessThan(cutOut + 0.5);
    for (const sample of samplesFrom(run, trip.seconds + 60))
      expect(standsAt('two-port', sample)).toBe('shut');
    expect(first(run, 'uncontrolled')).toBeUndefined();
  });

  test('the cut-out too: the boiler’s own thermostat is all that holds the store, and the relief valve stays shut', () => {
    const run = day(right, [welded, tripless]);
    expect(first(run, 'cut-out')?.says).toContain('but the cut-out fails to trip');
    expect(first(run, 'uncontrolled')).toBeDefined();
    expect(run.hottest).toBeGreaterThan(cutOut + 0.5);
    expect(run.hottest).toBeLessThan(flow + flowBand / 2);
    expect(run.relieved).toBe(0);
  });

  test('the boiler’s thermostat too: its limit locks out; where it resets itself, the relief valve lifts and holds', () => {
    const locked = day(right, [welded, tripless], { ...summer, flowFails: true });
    expect(first(locked, 'boiler')?.says).toContain('until it is reset by hand');
    expect(samplesFrom(locked, must(first(locked, 'boiler')).seconds + 60).some(({ boiler }) => boiler)).toBe(
      false,
    );
    expect(locked.relieved).toBe(0);

    const old = day(right, [welded, tripless], { ...summer, flowFails: true, limitResets: true });
    expect(first(old, 'relief')?.says).toContain('lifts');
    expect(old.relieved).toBeGreaterThan(10);
    expect(old.hottest).toBeGreaterThan(reliefOpens);
    // Approved Document G (2015, with 2016 amendments), requirement G3(3)(a): never more than 100 °C.
    expect(old.hottest).toBeLessThan(100);
    for (const { flow: water } of old.samples) expect(water).toBeLessThan(boilerLimit + 1);
  });

  // Found by an independent prototype of the protection layers: with the end switch on the permanent line, a two-port
  // stuck open fires the boiler by itself.
  test('a two-port stuck open in summer heats the store past the cut-out, though every control says stop', () => {
    const run = day(right, ['two-port: stuck open'], summer);
    expect(first(run, 'cut-out')).toBeDefined();
    expect(first(run, 'uncontrolled')).toBeDefined();
    expect(run.hottest).toBeGreaterThan(cutOut);
  });

  // Approved Document G 3.31: the valve must interrupt the heat when its supply is lost.
  test('a lost supply stops boiler and pump and shuts the two-port', () => {
    const run = day(right, ['spur: fuse blown'], { failAt: 7 });
    for (const sample of samplesFrom(run, 7 * 3600 + 60)) {
      expect(sample.boiler || sample.pump).toBe(false);
      expect(standsAt('two-port', sample)).toBe('shut');
    }
  });

  test('a live case meets its earth once the two-port is open and the pump is asked to run: the fuse blows and all stops', () => {
    const run = day(right, ['pump: live case']);
    const fuse = must(first(run, 'fuse'));
    expect(fuse.seconds).toBe(6 * 3600 + ORDINARY_DAY.motorSeconds);
    expect(samplesFrom(run, fuse.seconds).some(({ boiler, pump }) => boiler || pump)).toBe(false);
  });
});

describe('a wrong wiring beside a right one', () => {
  test('a cut-out bypassed by a link: the same welded thermostat now heats on and on', () => {
    const bypassed = day(mistake('cut-out-bypassed').wires, [welded]);
    expect(first(bypassed, 'uncontrolled')).toBeDefined();
    expect(first(day(right, [welded]), 'uncontrolled')).toBeUndefined();
  });

  test('the end switch fed from the call, a slow spring and a three-port that passes: the store passes its setting', () => {
    const day20 = (wires: typeof right) =>
      day(wires, ['three-port: passing'], { springSeconds: 20, failAt: 1 });
    expect(day20(right).hottest).toBeLessThan(thermostat + 0.5);
    expect(day20(mistake('end-switch-fed-from-call').wires).hottest).toBeGreaterThan(thermostat + 2);
  });

  test('call and satisfied swapped: a hot store is heated until the cut-out trips', () => {
    expect(first(day(mistake('cylinder-call-and-satisfied-swapped').wires), 'cut-out')).toBeDefined();
  });

  test('a valve that hunts all day long is followed to the end of the day', () => {
    const { samples } = day(mistake('three-port-grey-on-neutral').wires);
    expect(samples.at(-1)?.seconds).toBe(24 * 3600);
    const seen = new Set(samples.slice(7 * 60, 8 * 60).map((sample) => standsAt('three-port', sample)));
    expect(seen.size).toBeGreaterThan(1);
  });
});

test('failures strike at their time: until then the day goes as if nothing failed', () => {
  const [sound, failed] = [day(right), day(right, [welded], { failAt: 17 })];
  const until = 17 * 60;
  expect(failed.samples.slice(0, until)).toEqual(sound.samples.slice(0, until));
  expect(first(failed, 'failure')).toEqual({
    seconds: 17 * 3600,
    kind: 'failure',
    says: 'From now on the cylinder thermostat is welded on its call.',
  });
});

test('the store takes in the water that is drawn: the energy of 200 litres at the store’s temperature', () => {
  const { heat } = day(right);
  // Between what the coldest and the hottest store of the day would give, at 0.001163 kWh a litre and kelvin.
  const kWh = heat.drawn / 3.6e6;
  expect(kWh).toBeGreaterThan(200 * 0.001163 * (48 - 10));
  expect(kWh).toBeLessThan(200 * 0.001163 * (60.5 - 10));
});
