import { expect, test } from 'vitest';
import { readTyped } from '../../../src/ui/aid/typed.ts';

const shown = (instrument: Parameters<typeof readTyped>[0], text: string) => {
  const typed = readTyped(instrument, text);
  return 'shown' in typed ? typed.shown : typed.problem;
};

test.each([
  ['tester', '230 V', 230],
  ['tester', ' 230v ', 230],
  ['tester', 'about 240 volts', 230],
  ['tester', '195.5', 230],
  ['tester', '50 V', 50],
  ['tester', '12', 12],
  ['tester', 'dead', 0],
  ['tester', 'No lamp', 0],
  ['volts', '57 V', 57],
  ['volts', '0', 0],
  ['volts', '0,4 V a.c.', 0],
  ['continuity', 'beep', true],
  ['continuity', 'Beeps', true],
  ['continuity', '0.4 ohm', true],
  ['continuity', '0.4 Ω', true],
  ['continuity', '2.3k', false],
  ['continuity', 'silent', false],
  ['continuity', 'open', false],
  ['ohms', '0.4 ohm', 0.4],
  ['ohms', '0,4 ohms', 0.4],
  ['ohms', '2.4 kΩ', 2400],
  ['ohms', '2.4kohm', 2400],
  ['ohms', '20 M', 20e6],
  ['ohms', 'open', Number.POSITIVE_INFINITY],
  ['ohms', 'O.L.', Number.POSITIVE_INFINITY],
  ['ohms', '∞', Number.POSITIVE_INFINITY],
  ['ohms', 'closed', 0],
] as const)('On the %s “%s” is read as %s', (instrument, text, value) => {
  expect(shown(instrument, text)).toBe(value);
});

test.each([
  ['tester', '', 'Type what the meter shows'],
  ['tester', 'lots', '“lots” cannot be read here. Type “230 V”'],
  ['volts', '0.4 ohm', 'is in ohms'],
  ['volts', '2300', 'more than 500 V'],
  ['volts', '-12 V', 'cannot be read here'],
  ['ohms', '230 V', 'it is not dead'],
  ['continuity', '230 V', 'it is not dead'],
  ['ohms', 'a few', '“0.4 ohm”'],
] as const)('On the %s “%s” is refused with words that help', (instrument, text, words) => {
  expect(shown(instrument, text)).toContain(words);
});
