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

/** True when the site in `dist/` is missing or older than anything that it is built from. */
export function isStale(root: string): boolean {
  const built = join(root, 'dist', 'index.html');
  if (!existsSync(built)) return true;
  const age = statSync(built).mtimeMs;
  return sources.some((source) => newest(join(root, source)) > age);
}
