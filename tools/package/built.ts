import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { isStale } from '../stale.ts';

/** Where the site for packages is built, from the project's root. Nothing there is kept under version control. */
export const SITE = '.astro/package-site';

/**
 * The site as packages hold it; built first when there is none or when something that it is made from is newer.
 * @returns its folder
 * @throws Error when the build fails
 */
export function builtSite(root: string): string {
  const folder = join(root, SITE);
  if (!isStale(root, SITE, ['tools/package'])) return folder;
  const { status } = spawnSync('npm', ['exec', '--', 'astro', 'build', '--outDir', SITE], {
    cwd: root,
    env: { ...process.env, PUBLIC_FOR_PACKAGES: '1' },
    stdio: ['ignore', process.stderr.fd, process.stderr.fd],
    shell: process.platform === 'win32',
  });
  if (status !== 0) throw new Error('The site for packages could not be built: see above.');
  return folder;
}
