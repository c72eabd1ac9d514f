import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import type { Read } from '../course/marks/grade-result.ts';
import { FileError } from '../files/error.ts';
import { MOST_FILES, openHandedIn, readHandedIn } from '../files/handed-in.ts';
import { zipLimits } from '../files/zip.ts';
import { readFailure } from './load.ts';

/** What came out of the files, folders and zips that were named. */
export interface HandedIn {
  readonly reads: readonly Read[];
  readonly troubles: readonly FileError[];
}

/** A file to read, and what it is called in messages. */
interface Found {
  readonly path: string;
  readonly name: string;
}

/**
 * Reads results out of files, folders (with all that is in them) and zips. What cannot be read is a trouble with its name.
 * @param paths full paths
 */
export function readResults(paths: readonly string[]): HandedIn {
  const reads: Read[] = [];
  const troubles: FileError[] = [];
  const tried = (what: () => void) => {
    try {
      what();
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      troubles.push(error);
    }
  };
  const found: Found[] = [];
  for (const path of paths) tried(() => found.push(...filesAt(path)));
  const names = new Set<string>();
  for (const { path, name } of found.slice(0, MOST_FILES))
    tried(() => {
      const opened = openHandedIn(name, bytesOf(path, name));
      troubles.push(...opened.troubles);
      for (const file of opened.files)
        tried(() => {
          const result = readHandedIn(file);
          // Two folders may hold files of one name.
          let own = file.name;
          for (let k = 2; names.has(own); k++) own = `${file.name} (${k})`;
          names.add(own);
          reads.push({ file: own, result });
        });
    });
  if (found.length > MOST_FILES)
    troubles.push(
      new FileError({
        file: 'all files together',
        place: '',
        expected: `at most ${MOST_FILES}`,
        found: `${found.length}, of which the first ${MOST_FILES} were read`,
      }),
    );
  return { reads, troubles };
}

/** A file, or every file in a folder; links out of a folder are not followed. */
function filesAt(path: string): Found[] {
  const top = basename(path);
  try {
    if (!lstatSync(path).isDirectory()) return [{ path, name: top }];
    return readdirSync(path, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((full) => ({ path: full, name: join(top, relative(path, full)) }));
  } catch (error) {
    throw readFailure(error, top, 'a file or a folder');
  }
}

function bytesOf(path: string, name: string): Uint8Array {
  try {
    const { size } = lstatSync(path);
    if (size > zipLimits.packed)
      throw new FileError({
        file: name,
        place: '',
        expected: `at most ${zipLimits.packed / 1e6} MB`,
        found: `${Math.round(size / 1e6)} MB`,
      });
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    if (error instanceof FileError) throw error;
    throw readFailure(error, name, 'a file');
  }
}
