import { expect, test } from 'vitest';
import { FileError, quote, show } from '../../src/files/error.ts';
import { placeAt } from '../../src/files/place.ts';
import { closest, distance } from '../../src/files/suggest.ts';
import { decodeText } from '../../src/files/text.ts';

test('what was found is at most 80 characters, on one line, with nothing a terminal would obey', () => {
  const nasty = [...Array(0x250).keys(), 0x2028, 0x202e, 0xfeff, 0xd800].map((code) =>
    String.fromCharCode(code),
  );
  for (const text of [...nasty, nasty.join(''), '\u{1f600}'.repeat(99), '"'.repeat(99), 'a\r\n\tb']) {
    expect(show(text).length).toBeLessThanOrEqual(80);
    expect(show(text)).not.toMatch(/[\p{C}\p{Zl}\p{Zp}]/u);
  }
  expect(quote('say "on"\n')).toBe('"say \\"on\\"\\u{a}"');
});

test('a value is described without looking inside it', () => {
  const found = [undefined, null, 3, true, [], [1, [2]], { a: 1 }].map(show);
  expect(found).toEqual(['nothing', 'null', '3', 'true', 'an empty list', 'a list of 2', 'a set of keys']);
});

test('a message names the file, the place, what was expected and what was found', () => {
  const trouble = { file: 'a\nb.json', place: 'wires[0]', expected: 'a wire', found: '3' };
  expect(new FileError(trouble).message).toBe('a\\u{a}b.json: wires[0]: expected a wire, found 3');
});

test('places read as they would be written in code', () => {
  expect(placeAt(['wires', 3, 1])).toBe('wires[3][1]');
  expect(placeAt(['parts', 'cyl-stat', 'kind'])).toBe('parts.cyl-stat.kind');
  expect(placeAt(['gives', 'wires', 'strip/1', 0])).toBe('gives.wires["strip/1"][0]');
  expect(placeAt([])).toBe('top level');
});

test('letters changed, added, dropped or swapped with a neighbour count one each', () => {
  expect([
    distance('boiler', 'boilr'),
    distance('titel', 'title'),
    distance('', 'abc'),
    distance('a', 'a'),
  ]).toEqual([1, 1, 3, 0]);
});

test('a name is offered only when it is like the one given', () => {
  expect(closest('hwon', ['HW-ON', 'HW-OFF'])).toBe('HW-ON');
  expect(closest('13', ['1', '12'])).toBeUndefined();
  expect(closest('zebra', ['boiler', 'pump'])).toBeUndefined();
  expect(closest('x'.repeat(1_000_000), ['x'])).toBeUndefined();
});

test('the first byte that is not UTF-8 is named by line and column', () => {
  const bytes = (...parts: (string | number)[]) =>
    Uint8Array.from(
      parts.flatMap((part) => (typeof part === 'number' ? [part] : [...new TextEncoder().encode(part)])),
    );
  expect(decodeText(bytes('é€'), 'a')).toBe('é€');
  expect(() => decodeText(bytes('é\n€', 0xe9, 'x'), 'a')).toThrow(
    'a: line 2, column 2: expected text in UTF-8, found the byte 0xe9',
  );
  expect(() => decodeText(bytes('ab', 0xe2, 0x82), 'a')).toThrow(
    'a: line 1, column 3: expected text in UTF-8, found the byte 0xe2',
  );
  expect(() => decodeText(bytes(0xc0, 0x80), 'a')).toThrow('a: line 1, column 1: ');
});
