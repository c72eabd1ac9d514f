import { expect, test } from 'vitest';
import { displayOf, mayBeGhost } from '../../../../src/ui/callout/board/reading.ts';
import { figuresOf } from '../../../../src/ui/callout/board/segments.ts';

/** Segments a to g of seven-segment figures, as every clock and meter shows them (common practice). */
const FIGURES = { 0: 'abcdef', 1: 'bc', 2: 'abdeg', 4: 'bcfg', 7: 'abc', 8: 'abcdefg', 9: 'abcdfg' };
const sorted = (lit: string) => [...lit].sort().join('');

test.each(Object.entries(FIGURES))('The display makes a %s of the right segments', (figure, lit) => {
  expect(sorted(figuresOf(figure)[3]?.lit ?? '')).toBe(lit);
});

test('A number stands to the right of the display, and its point takes no figure', () => {
  expect(figuresOf('58').map(({ lit }) => lit !== '')).toEqual([false, false, true, true]);
  expect(figuresOf('1.23').map(({ point }) => point)).toEqual([false, true, false, false]);
  expect(() => figuresOf('?')).toThrow(RangeError);
});

test('Ohms are shown with three figures, in the unit that suits them', () => {
  expect(displayOf('ohms', 0)).toMatchObject({ figures: '0', unit: 'Ω' });
  expect(displayOf('ohms', 999)).toMatchObject({ figures: '999', unit: 'Ω' });
  expect(displayOf('ohms', 2400)).toMatchObject({ figures: '2.40', unit: 'kΩ' });
  expect(displayOf('ohms', 12_000)).toMatchObject({ figures: '12.0', unit: 'kΩ' });
  expect(displayOf('ohms', 3_300_000)).toMatchObject({ figures: '3.30', unit: 'MΩ' });
  expect(displayOf('ohms', Number.POSITIVE_INFINITY)).toMatchObject({ figures: '0L', unit: 'MΩ' });
});

test('Every reading can be shown by the figures of the display', () => {
  const all = [0, 1, 57, 230, 999, 1000, 9999, 10_000, 999_999, 1e6, 9.99e6, 1e7, Number.POSITIVE_INFINITY];
  for (const shown of all) {
    for (const instrument of ['volts', 'ohms'] as const) {
      if (instrument === 'volts' && shown > 400) continue;
      expect(figuresOf(displayOf(instrument, shown).figures)).toHaveLength(4);
    }
  }
  for (const shown of [true, false, 'refused', undefined] as const)
    expect(figuresOf(displayOf('continuity', shown).figures)).toHaveLength(4);
});

test('The tester lights its lamps up to the reading and the multimeter beeps for a way through', () => {
  expect(displayOf('tester', 120)).toMatchObject({ lamp: 120, says: 'Lamps light up to 120 volts' });
  expect(displayOf('tester', 0)).toMatchObject({ lamp: 0, says: 'No lamp lights' });
  expect(displayOf('continuity', true)).toMatchObject({ beeps: true, figures: '0' });
  expect(displayOf('continuity', false)).toMatchObject({ beeps: false, figures: '0L' });
});

test('Continuity refused on a live circuit says what was unsafe about it', () => {
  const { refused, says } = displayOf('continuity', 'refused');
  expect(refused).toBe(true);
  expect(says).toContain('continuity on a live circuit');
});

test('Volts between nothing and mains on a multimeter are called in question, on a tester they are not', () => {
  // 20 to 110 V is what people meet on a floating core (common practice).
  for (const volts of [20, 57, 110]) expect(mayBeGhost('volts', volts)).toBe(true);
  // The lowest and the highest mains (BS EN 60038).
  for (const volts of [0, 216, 230, 253]) expect(mayBeGhost('volts', volts)).toBe(false);
  expect(mayBeGhost('tester', 50)).toBe(false);
});
