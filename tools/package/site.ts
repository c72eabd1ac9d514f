import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { filesBelow } from './files.ts';
import { holdsAddresses, relative } from './relative.ts';

/**
 * What a package has no use for: a learning platform shows no page of ours for what is missing, reads no headers file,
 * and installs nothing.
 */
const LEFT_OUT = [
  '404.html',
  '_headers',
  'manifest.webmanifest',
  'icon-512.png',
  'icon-maskable.png',
  'wiring-page.png',
];

/** Makes a built site fit for packages, in place: every address relative, and only what is of use there. */
export function makeRelative(folder: string): void {
  for (const name of LEFT_OUT) rmSync(join(folder, name), { force: true });
  for (const file of filesBelow(folder).filter(holdsAddresses)) {
    const path = join(folder, file);
    const text = readFileSync(path, 'utf8');
    const made = relative(text, file);
    if (made !== text) writeFileSync(path, made);
  }
}

/** Makes the site of this build relative once it is built. */
export default function relativeSite(): AstroIntegration {
  return {
    name: 'relative site',
    hooks: {
      'astro:build:done': ({ dir }) => makeRelative(fileURLToPath(dir)),
    },
  };
}
