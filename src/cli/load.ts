import { closeSync, openSync, readSync } from 'node:fs';
import { resolve } from 'node:path';
import { MOST_BYTES, tooBig } from '../files/attempt.ts';
import { FileError, quote } from '../files/error.ts';
import { decodeText } from '../files/text.ts';

const troubles = new Map([
  ['ENOENT', 'no such file'],
  ['ENOTDIR', 'no such file'],
  ['EISDIR', 'a folder'],
  ['EACCES', 'a file that may not be read'],
  ['EPERM', 'a file that may not be read'],
  ['ENAMETOOLONG', 'a name too long for a file'],
]);

/** A failure of the system's to read something, as bad input. */
export function readFailure(error: unknown, file: string, expected: string): FileError {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return new FileError({ file, place: '', expected, found: troubles.get(code) ?? quote(String(error)) });
}

/**
 * The text of a file of at most 1 MiB; never reads further, so an endless device does no harm.
 * @throws FileError when it cannot be read, is bigger, or is not UTF-8
 */
export function readText(path: string | URL, file: string): string {
  const bytes = new Uint8Array(MOST_BYTES + 1);
  let length = 0;
  try {
    const handle = openSync(path, 'r');
    try {
      for (let more = 1; more > 0 && length < bytes.length; length += more)
        more = readSync(handle, bytes, length, bytes.length - length, null);
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    throw readFailure(error, file, 'a file');
  }
  if (length > MOST_BYTES) throw tooBig(file);
  return decodeText(bytes.subarray(0, length), file);
}

/** Where a file named on the command line is: npm starts commands in the project's folder, not in the caller's. */
export function callersPath(file: string, script: string): string {
  const { npm_lifecycle_event: running, INIT_CWD: folder } = process.env;
  return resolve(running === script && folder ? folder : process.cwd(), file);
}
