import type { Core, Duty, PartKind, TerminalSpec } from '../../engine/model/part.ts';

/** A row of a table of terminals: one terminal, or a run of terminals that differ in nothing but their number. */
export interface TerminalRow {
  readonly name: string;
  readonly terminal: TerminalSpec;
}

const alike = (a: TerminalSpec, b: TerminalSpec): boolean =>
  a.core === b.core && a.duty === b.duty && a.does === b.does;

/** The terminals of a kind for a table: the ways of a strip become one row, `1 to 12`. */
export function terminalRows({ terminals }: PartKind): TerminalRow[] {
  const rows: { first: TerminalSpec; last: TerminalSpec }[] = [];
  for (const terminal of terminals) {
    const open = rows.at(-1);
    if (open && terminal.duty === 'joint' && alike(open.first, terminal)) open.last = terminal;
    else rows.push({ first: terminal, last: terminal });
  }
  return rows.map(({ first, last }) => ({
    name: first === last ? first.id : `${first.id} to ${last.id}`,
    terminal: first,
  }));
}

/** What a terminal is for, in a word or two. */
export const dutyWords: Record<Duty, string> = {
  line: 'permanent line',
  neutral: 'neutral',
  earth: 'earth',
  switched: 'switched',
  joint: 'joint',
  'extra-low': 'extra-low voltage, never mains',
};

/** A core's colour as people say it. */
export const coreWords = (core: Core): string => (core === 'green-yellow' ? 'green and yellow' : core);
