import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { type Complaint, judge } from './judge.ts';

const code = /\.(ts|mts|js|mjs|svelte|astro|mdx)$/;

/**
 * Judges every source file of a project.
 * @param root the folder that holds `src/`
 * @returns what is wrong, file by file; empty when all is well
 */
export function judgeLayers(root: string): readonly Complaint[] {
  const src = join(root, 'src');
  return readdirSync(src, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && code.test(entry.name) && !entry.name.endsWith('.d.ts'))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .flatMap((file) => judge(relative(src, file).split(sep).join('/'), readFileSync(file, 'utf8')));
}
