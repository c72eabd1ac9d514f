import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** Every file below a folder: its path from there with `/`, sorted by code units, the same on every machine. */
export function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}
