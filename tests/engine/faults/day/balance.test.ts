import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runDay } from '../../../../src/engine/faults/day/run.ts';
import { ORDINARY_DAY } from '../../../../src/engine/faults/day/settings.ts';
import { allFailures, compatible, type Failure } from '../../../../src/engine/faults/failure.ts';
import { mistakes, references, system } from '../../support/flagship.ts';
import { must } from '../../support/must.ts';
import { seed, wirings } from '../../support/random.ts';

const days = fc.record({
  wires: fc.oneof(
    fc.constantFrom(...[...references, ...mistakes].map(({ wires }) => wires)),
    wirings(
      system,
      references.map(({ wires }) => wires),
    ),
  ),
  failing: fc.array(fc.nat(999), { maxLength: 3 }),
  failAt: fc.integer({ min: 0, max: 23 }),
  litres: fc.integer({ min: 100, max: 400 }),
  boilerKilowatts: fc.integer({ min: 6, max: 30 }),
  flowFails: fc.boolean(),
  limitResets: fc.boolean(),
  springSeconds: fc.integer({ min: 4, max: 30 }),
});

const picked = (all: readonly Failure[], picks: readonly number[]): Failure[] =>
  picks
    .map((pick) => must(all[pick % Math.max(1, all.length)]))
    .filter((failure, k, chosen) =>
      chosen.slice(0, k).every((other) => other !== failure && compatible(other, failure)),
    );

test('over any day of any wiring with any failures, the energy balance closes to a thousandth', () => {
  let fired = 0;
  fc.assert(
    fc.property(days, ({ wires, failing, ...more }) => {
      const settings = { ...ORDINARY_DAY, ...more };
      const run = runDay(system, wires, settings, picked(allFailures(system, wires), failing));
      const { boiler, radiators, primaryLoss, storeLoss, drawn, relieved, stored } = run.heat;
      const out = radiators + primaryLoss + storeLoss + drawn + relieved;
      // Against all the heat that moved, so that a day without a fire counts too.
      expect(Math.abs(boiler - out - stored)).toBeLessThan(0.001 * (boiler + drawn + storeLoss));
      // And against what can be read off the samples: the first and last temperatures.
      const [start, end] = [must(run.samples[0]), must(run.samples.at(-1))];
      const perKelvin = 0.001163 * 3.6e6;
      const kept =
        perKelvin *
        (settings.litres * (end.store - start.store) + settings.primaryLitres * (end.flow - start.flow));
      expect(Math.abs(boiler - out - kept)).toBeLessThan(0.001 * (boiler + drawn + storeLoss));
      if (boiler > 0) fired++;
    }),
    { seed, numRuns: 60 },
  );
  expect(fired).toBeGreaterThan(20);
});

test('nothing that the model can meet boils the store or takes it below the cold water', () => {
  fc.assert(
    fc.property(days, ({ wires, failing, ...more }) => {
      const run = runDay(
        system,
        wires,
        { ...ORDINARY_DAY, ...more },
        picked(allFailures(system, wires), failing),
      );
      expect(run.hottest).toBeLessThan(100);
      for (const { store } of run.samples) expect(store).toBeGreaterThan(ORDINARY_DAY.cold);
    }),
    { seed: seed + 1, numRuns: 40 },
  );
});
