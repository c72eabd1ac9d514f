import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A text file: its name without the folder, and what it says. */
export interface TextFile {
  name: string;
  text: string;
}

/**
 * The files of a folder, sorted by name.
 * @param folder path from the project's root; a folder that is not there gives an empty list
 * @param ending how the names end, with the dot: `.mdx`
 */
export function filesIn(folder: string, ending: string, root: string = process.cwd()): TextFile[] {
  const path = join(root, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path)
    .filter((name) => name.endsWith(ending))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(path, name), 'utf8') }));
}
