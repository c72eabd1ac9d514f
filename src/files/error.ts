/** What is wrong with a file: where, what was expected there and what stands there instead. */
export interface Trouble {
  readonly file: string;
  /** From 1, where it is known. */
  readonly line?: number;
  /** `wires[3][1]`, `line 2, column 5`, `top level`; empty when the file itself is the trouble. */
  readonly place: string;
  readonly expected: string;
  /** Shortened and free of control characters: see `show`. */
  readonly found: string;
}

/** Bad input. The message is one line that a person can act on. */
export class FileError extends Error implements Trouble {
  readonly file: string;
  readonly line?: number;
  readonly place: string;
  readonly expected: string;
  readonly found: string;

  constructor({ file, line, place, expected, found }: Trouble) {
    const where = line === undefined ? printable(file) : `${printable(file)}:${line}`;
    super([where, place, `expected ${expected}, found ${found}`].filter(Boolean).join(': '));
    this.name = 'FileError';
    this.file = file;
    if (line !== undefined) this.line = line;
    this.place = place;
    this.expected = expected;
    this.found = found;
  }
}

/** The longest piece of a file that a message repeats. */
const MOST_SHOWN = 60;

/** One character as it may be printed: control, format and private characters and lone halves become codes. */
const escaped = (char: string): string =>
  /[\p{C}\p{Zl}\p{Zp}]/u.test(char) ? `\\u{${(char.codePointAt(0) ?? 0).toString(16)}}` : char;

/** Text as it may be printed on a terminal, on one line. */
export const printable = (text: string): string => Array.from(text, escaped).join('');

/** Text in quotes, printable, and cut when it is long. */
export function quote(text: string): string {
  let out = '';
  for (const char of text) {
    const next = char === '"' || char === '\\' ? `\\${char}` : escaped(char);
    if (out.length + next.length > MOST_SHOWN) return `"${out}…"`;
    out += next;
  }
  return `"${out}"`;
}

/** A value out of a file, in at most about 80 characters. Never looks inside lists and objects: they may be deep. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return quote(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'a set of keys';
  return String(value);
}
