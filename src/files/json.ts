import { FileError, quote } from './error.ts';
import { whereJsonBreaks } from './json-break.ts';
import { lineColumn } from './place.ts';

/**
 * Data out of JSON text; a byte order mark in front is accepted.
 * @throws FileError with the line and column where the text breaks
 */
export function parseJson(text: string, file: string): unknown {
  const bare = text.startsWith('\ufeff') ? text.slice(1) : text;
  try {
    return JSON.parse(bare);
  } catch {
    // The parser's own words differ from browser to browser, and do not always name the place.
    if (bare.trim() === '')
      throw new FileError({ file, place: lineColumn(bare, 0), expected: 'JSON text', found: 'nothing' });
    const { offset, expected } = whereJsonBreaks(bare);
    const rest = bare.slice(offset, offset + 20).split('\n')[0] ?? '';
    const found = offset >= bare.trimEnd().length ? 'the end' : quote(rest);
    throw new FileError({ file, place: lineColumn(bare, offset), expected, found });
  }
}
