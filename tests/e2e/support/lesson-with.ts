import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('../../../content/lessons', import.meta.url));

/**
 * The address of the first lesson whose text has a component that fits, and the place of that component among those of
 * its name on the page, from 0.
 * @throws when no lesson has one
 */
export function lessonWith(name: string, fits: (tag: string) => boolean): { path: string; at: number } {
  for (const part of readdirSync(home, { withFileTypes: true }).filter((one) => one.isDirectory())) {
    for (const file of readdirSync(join(home, part.name))
      .filter((one) => one.endsWith('.mdx'))
      .sort()) {
      const text = readFileSync(join(home, part.name, file), 'utf8');
      const tags = text.match(new RegExp(`<${name}\\b[\\s\\S]*?/>`, 'g')) ?? [];
      const at = tags.findIndex(fits);
      if (at >= 0) return { path: `/lessons/${file.replace(/^\d+-|\.mdx$/g, '')}/`, at };
    }
  }
  throw new Error(`No lesson has a <${name}> that fits.`);
}
