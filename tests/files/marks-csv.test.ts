import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { marksCsv } from '../../src/files/marks-csv.ts';

const read = (csv: string) =>
  Papa.parse<string[]>(csv.replace(/^\ufeff/, ''), { delimiter: ',', newline: '\r\n' }).data.slice(0, -1);

// OWASP, "CSV Injection" (2024): cells that begin with = + - @, tab or carriage return; the newline and the full-width
// signs are in its later list.
const BEGINNINGS = ['=', '+', '-', '@', '\t', '\r', '\n', '\uff1d', '\uff0b', '\uff0d', '\uff20'];

test('a cell that a spreadsheet would work out begins with an apostrophe, and stays one cell', () => {
  for (const begin of BEGINNINGS) {
    const nasty = `${begin}cmd|' /C calc'!A1`;
    const csv = marksCsv([['a', nasty, 'z']]);
    expect(csv).toContain(`"'${begin}`);
    expect(read(csv)).toEqual([['a', `'${nasty}`, 'z']]);
  }
});

test('so does one that goes on over several lines, or stands behind spaces', () => {
  expect(marksCsv([['=1\n+2']])).toContain(`"'=1`);
  expect(marksCsv([['  =1+1']])).toContain(`"'  =1+1"`);
});

test('a separator or quotation marks in a name start no cell of their own', () => {
  const name = '","=1+1","';
  expect(read(marksCsv([[name, 'b']]))).toEqual([[name, 'b']]);
});

test('numbers stay numbers, below nought too, and plain words stay as they are', () => {
  expect(marksCsv([[-1, 0.5, 'AB-1', "O'Neil"]])).toBe("\ufeff-1,0.5,AB-1,O'Neil\r\n");
});

test('whatever the text, no cell begins as a formula does and every cell is told back', () => {
  const nasty = fc.string({
    unit: fc.constantFrom(...BEGINNINGS, 'a', '"', ',', ' ', '\u0000', "'"),
    maxLength: 8,
  });
  fc.assert(
    fc.property(fc.array(nasty, { minLength: 2, maxLength: 4 }), (cells) => {
      const [row] = read(marksCsv([cells]));
      expect(row).toHaveLength(cells.length);
      for (const [k, cell] of (row ?? []).entries()) {
        expect(cell.trimStart()).not.toMatch(/^[=+\-@\uff1d\uff0b\uff0d\uff20]/);
        expect(cell.replace(/^'/, '')).toBe((cells[k] ?? '').replaceAll('\0', '').replace(/^'/, ''));
      }
    }),
  );
});
