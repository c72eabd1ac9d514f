import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Test } from '../../../src/engine/diagnose/evidence.ts';
import type { Instrument } from '../../../src/engine/diagnose/instrument.ts';
import { mayBe, siteClass } from '../../../src/ui/aid/agrees.ts';

const reads = (instrument: Instrument): Test => ({ kind: 'reads', instrument, between: ['a/1', 'a/2'] });

test.each([
  // Mains anywhere from 216 to 253 V is mains (BS EN 60038).
  ['volts', 216, 230, true],
  ['volts', 253, 230, true],
  ['volts', 0, 230, false],
  ['volts', 230, 0, false],
  // A floating core reads 20 to 110 V on a multimeter, whatever the engine works out, or nothing (common practice).
  ['volts', 24, 57, true],
  ['volts', 110, 57, true],
  ['volts', 3, 57, true],
  ['volts', 230, 57, false],
  ['tester', 230, 230, true],
  ['tester', 0, 12, true],
  ['tester', 0, 230, false],
  ['tester', 230, 0, false],
  // Makers publish no ohms of windings: any motor is a load, none is a joint or open.
  ['ohms', 2_000, 8_817, true],
  ['ohms', 14_000, 8_817, true],
  ['ohms', 30, 529, true],
  ['ohms', 0.4, 529, false],
  ['ohms', 0.4, 0, true],
  ['ohms', Number.POSITIVE_INFINITY, 8_817, false],
  ['ohms', Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, true],
  ['ohms', 8_817, Number.POSITIVE_INFINITY, false],
  // An immersion heater of 3 kW has about 17.6 Ω (230² / 3000).
  ['ohms', 17.6, 18, true],
] as const)('On the %s %s found where the engine shows %s: %s', (instrument, found, shown, fits) => {
  expect(mayBe(reads(instrument), found, shown)).toBe(fits);
});

test('What the engine shows always agrees with itself, so the true fault is never ruled out', () => {
  const outcomes = {
    tester: fc.constantFrom(0, 12, 24, 50, 120, 230),
    volts: fc.integer({ min: 0, max: 253 }),
    ohms: fc.oneof(fc.integer({ min: 0, max: 20_000_000 }), fc.constant(Number.POSITIVE_INFINITY)),
    continuity: fc.boolean(),
  };
  for (const instrument of ['tester', 'volts', 'ohms', 'continuity'] as const) {
    fc.assert(
      fc.property(outcomes[instrument] as fc.Arbitrary<number | boolean>, (shown) =>
        mayBe(reads(instrument), shown, shown),
      ),
    );
  }
});

test('What is of one class for a meter on site agrees with each other, but for the edges of a class', () => {
  expect(siteClass(reads('tester'), 0)).toBe(siteClass(reads('tester'), 24));
  expect(siteClass(reads('volts'), 230)).not.toBe(siteClass(reads('volts'), 57));
  expect(siteClass(reads('ohms'), 529)).toBe(siteClass(reads('ohms'), 8_817));
});

test('A look is answered by what was seen and nothing else', () => {
  expect(mayBe({ kind: 'works', part: 'boiler' }, true, true)).toBe(true);
  expect(mayBe({ kind: 'works', part: 'boiler' }, true, false)).toBe(false);
  expect(mayBe({ kind: 'stands', part: 'valve' }, 'A', 'B')).toBe(false);
});
