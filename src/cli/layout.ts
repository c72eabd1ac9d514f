import type { StateRow } from '../engine/grade/table.ts';
import type { System } from '../engine/model/system.ts';

/** A table in words: a heading over every column, and the rows. */
export interface Grid {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The judged states as words: settings, valve positions, boiler, pump, where heat goes, what is broken. */
export function gridOf(system: System, rows: readonly StateRow[]): Grid {
  const inputs = system.inputs.map(({ id }) => id);
  const valves = system.movers.flatMap(({ part }) => system.parts[part]?.id ?? []);
  return {
    headings: [...inputs, ...valves, 'boiler', 'pump', 'heat to', 'verdict', 'breaks'],
    rows: rows.map(({ settings, positions, fires, pumps, heats, broken }) => [
      ...inputs.map((id) => settings[id] ?? ''),
      ...valves.map((id) => positions[id] ?? ''),
      fires ? 'fires' : 'off',
      pumps ? 'runs' : 'off',
      heats.join(' '),
      broken.length > 0 ? 'FAILS' : 'right',
      broken.join(' '),
    ]),
  };
}

/** Columns lined up by spaces; an empty cell is a dash. */
export function aligned({ headings, rows }: Grid): string {
  const all = [headings, ...rows.map((row) => row.map((cell) => cell || '-'))];
  const widths = headings.map((_, column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
  const line = (row: readonly string[]) =>
    row
      .map((cell, k) => cell.padEnd(widths[k] ?? 0))
      .join('  ')
      .trimEnd();
  return all.map((row) => `${line(row)}\n`).join('');
}

/** Comma-separated values as RFC 4180 has them: lines end in CR LF, quotes stand where they must. */
export function csv({ headings, rows }: Grid): string {
  const cell = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return [headings, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
