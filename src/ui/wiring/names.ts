import { partOf, type System } from '../../engine/model/system.ts';

/** The marking of a terminal without its part: `HW-ON`, `orange`, `7`. */
export const markOf = (terminal: string): string => terminal.slice(terminal.indexOf('/') + 1);

/** Letters for the colours of cores, from IEC 60757; the earth lead goes by its terminal's letter. */
const LETTERS: Readonly<Record<string, string>> = {
  brown: 'BN',
  blue: 'BU',
  grey: 'GY',
  orange: 'OG',
  white: 'WH',
  black: 'BK',
  earth: 'E',
};

/** A lead that is called by its colour, by the letters of that colour. */
export const lettersOf = (mark: string): string => LETTERS[mark] ?? mark;

/** A terminal for a tag: "3-port orange", or "7" on the strip. */
export function tagOf(system: System, terminal: string): string {
  const part = partOf(system, system.nodeOf.get(terminal)!);
  return part.kind.kind === 'strip' ? markOf(terminal) : `${part.short} ${markOf(terminal)}`;
}

/** A terminal for a sentence or a screen reader: "Three-port valve orange", "terminal 7". */
export function nameOf(system: System, terminal: string): string {
  const part = partOf(system, system.nodeOf.get(terminal)!);
  return part.kind.kind === 'strip' ? `terminal ${markOf(terminal)}` : `${part.name} ${markOf(terminal)}`;
}
