import Papa from 'papaparse';
import type { Cells } from '../course/marks/cells.ts';

/** Spreadsheets take a file for UTF-8 only when it begins so. */
const MARK = '\ufeff';

/**
 * Cells as comma-separated values (RFC 4180), safe to open in a spreadsheet: text that one would work out as a formula
 * gets an apostrophe in front, as OWASP says under "CSV Injection". Such a cell is quoted as well, so that what stands
 * in it cannot begin a cell of its own.
 */
export const marksCsv = (cells: Cells): string =>
  `${MARK}${Papa.unparse(
    cells.map((row) => row.map((cell) => (typeof cell === 'string' ? cell.replaceAll('\0', '') : cell))),
    { escapeFormulae: /^\s*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/, newline: '\r\n' },
  )}\r\n`;

/** A time as spreadsheets sort it, universal time: "2027-03-31 10:15:00"; empty for one that no calendar has. */
export function sayStamp(at: number): string {
  const date = new Date(at);
  return Number.isNaN(date.getTime()) ? '' : date.toISOString().slice(0, 19).replace('T', ' ');
}
