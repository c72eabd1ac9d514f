import { type Dirent, existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** What the built site is made from. */
const sources = ['src', 'content', 'public', 'tools/offline.ts', 'astro.config.mjs', 'package-lock.json'];

function newest(path: string): number {
  if (!existsSync(path)) return 0;
  const here = statSync(path);
  if (!here.isDirectory()) return here.mtimeMs;
  const inside = readdirSync(path, { withFileTypes: true }).map((entry: Dirent) =>
    newest(join(path, entry.name)),
  );
  // A folder's own time changes when a file in it is removed.
  return Math.max(here.mtimeMs, ...inside);
}

/**
 * True when a built site is missing or older than anything that it is built from.
 * @param folder where it is, from the project's root: the site that `npm start` serves, unless told
 * @param more what else it is built from
 */
export function isStale(root: string, folder = 'dist', more: readonly string[] = []): boolean {
  const built = join(root, folder, 'index.html');
  if (!existsSync(built)) return true;
  const age = statSync(built).mtimeMs;
  return [...sources, ...more].some((source) => newest(join(root, source)) > age);
}
