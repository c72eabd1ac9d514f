import { describe, expect, it } from 'vitest';
import { scaldTime } from '../../../src/engine/plant/scald.ts';

describe('the time to a scald', () => {
  // Source: exposure-time table descended from the 1947 burn study, read in public search results (secondary):
  // seconds to a second-degree burn and to one of full thickness.
  it.each([
    [45, 7200, 10_800],
    [47, 1200, 2700],
    [48, 900, 1200],
    [49, 480, 600],
    [51, 120, 252],
    [55, 17, 30],
  ])('at %i °C is the band of the table, %i to %i seconds', (celsius, quickest, slowest) => {
    const { value } = scaldTime(celsius);
    expect(value.quickest).toBeCloseTo(quickest, 6);
    expect(value.slowest).toBeCloseTo(slowest, 6);
  });

  it.each([60, 65])('at %i °C is “a few seconds”, as the sources differ by a factor of two', (celsius) => {
    expect(scaldTime(celsius).value.says).toBe('a few seconds');
  });

  // Source: medicalalgorithms.com fit for severe scalds: 60 °C 7.8 s, 65 °C 3.8 s (derived).
  it.each([
    [60, 3, 7.8],
    [65, 1, 3.8],
  ])('at %i °C reaches from the table’s %i s to the %f s of the fit', (celsius, quickest, slowest) => {
    expect(scaldTime(celsius).value.quickest).toBeCloseTo(quickest, 6);
    expect(scaldTime(celsius).value.slowest).toBeCloseTo(slowest, 1);
  });

  it('at 50 °C has five minutes in its band', () => {
    // Source: interpolated between the rows of 49 and 51 °C, “about 5 min” (derived).
    const { quickest, slowest, says } = scaldTime(50).value;
    expect(quickest).toBeLessThan(300);
    expect(slowest).toBeGreaterThan(300);
    expect(says).toBe('about 4 to 6 minutes');
  });

  it('never grows as the water gets hotter', () => {
    for (let t = 45; t < 69; t += 0.25) {
      const [here, hotter] = [scaldTime(t).value, scaldTime(t + 0.25).value];
      expect(hotter.quickest).toBeLessThanOrEqual(here.quickest);
      // The fit takes over at 58.3 °C with a step of less than 6 %.
      expect(hotter.slowest).toBeLessThan(here.slowest * 1.06);
    }
  });

  it('says what it takes outside the table', () => {
    expect(() => scaldTime(44)).toThrow('Water on the skin: a number from 45 to 69 °C, not 44');
  });
});
