import type { Result } from '../course/coursework/work.ts';
import { FileError } from './error.ts';
import { MOST_RESULT, parseResult } from './result.ts';
import { decodeText } from './text.ts';
import { isZip, readZip, type Unpacked, type ZipLimits, zipLimits } from './zip.ts';

/** At most so many result files are read at once. */
export const MOST_FILES = 5000;

/** Files as they were handed in, zips unpacked, and what was left out. */
export interface Opened {
  readonly files: readonly Unpacked[];
  readonly troubles: readonly FileError[];
}

/** The bytes of a file or of everything in a zip. Never throws: what cannot be read is a trouble with its name. */
export function openHandedIn(name: string, bytes: Uint8Array, limits: ZipLimits = zipLimits): Opened {
  try {
    return isZip(bytes) ? readZip(bytes, name, limits) : { files: [{ name, bytes }], troubles: [] };
  } catch (error) {
    if (error instanceof FileError) return { files: [], troubles: [error] };
    throw error;
  }
}

/** White space that JSON may begin with, and the mark of UTF-8. */
const BLANK = new Set([0x20, 0x09, 0x0a, 0x0d, 0xef, 0xbb, 0xbf]);

/**
 * A result out of a file that was handed in.
 * @throws FileError with the file, what was expected and what was found
 */
export function readHandedIn({ name, bytes }: Unpacked): Result {
  const refuse = (expected: string, found: string) =>
    new FileError({ file: name, place: '', expected, found });
  if (bytes.length === 0) throw refuse('a result file', 'an empty file');
  if (isZip(bytes)) throw refuse('a result file', 'a zip inside a zip: unpack the outer one first');
  // Letters take up to three bytes each, but those of a result are plain.
  if (bytes.length > 2 * MOST_RESULT) throw refuse(`at most ${MOST_RESULT / 1e6} MB`, 'more');
  const first = bytes.subarray(0, 64).find((byte) => !BLANK.has(byte));
  if (first !== 0x7b) throw refuse('a result file, as the coursework page saves it', 'another kind of file');
  try {
    return parseResult(decodeText(bytes, name), name);
  } catch (error) {
    if (error instanceof FileError) throw error;
    // A file so deep that the parser's own stack ends is no result either.
    if (error instanceof RangeError) throw refuse('a result file', 'data nested too deep');
    throw error;
  }
}
