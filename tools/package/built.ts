import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { isStale } from '../stale.ts';

/** Where the site for packages is built, from the project's root. Nothing there is kept under version control. */
export const SITE = '.astro/package-site';

/** What a test runner puts into the environment for itself, and a build would take for its own. */
const RUNNERS = new Set(['BASE_URL', 'MODE', 'DEV', 'PROD', 'SSR', 'TEST', 'NODE_ENV']);
const ownEnv = (): NodeJS.ProcessEnv =>
  Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !RUNNERS.has(name) && !name.startsWith('VITEST')),
  );

function build(root: string, args: readonly string[], env: Readonly<Record<string, string>>): void {
  const { status } = spawnSync('npm', ['exec', '--', 'astro', 'build', ...args], {
    cwd: root,
    env: { ...ownEnv(), ...env },
    // What is asked for goes to standard output; how the build goes does not.
    stdio: ['ignore', process.stderr.fd, process.stderr.fd],
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error('The site could not be built: see above.');
}

/**
 * The site as packages hold it; built first when there is none or when something that it is made from is newer.
 * @returns its folder
 * @throws Error when the build fails
 */
export function builtSite(root: string): string {
  if (isStale(root, SITE, ['tools/package'])) build(root, ['--outDir', SITE], { PUBLIC_FOR_PACKAGES: '1' });
  return join(root, SITE);
}

/** The site as it is served anywhere; built first when it is not up to date. */
export function builtDist(root: string): string {
  if (isStale(root)) build(root, [], {});
  return join(root, 'dist');
}
