/** `npm start`: builds the site when it is needed, serves it on this machine and opens it in the browser. */
import { spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { serve } from './serve.ts';
import { isStale } from './stale.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const usualPort = 4321;

/** Asks the system to open an address. Says nothing when there is no browser: the address is printed anyway. */
function openBrowser(address: string): void {
  const { platform, env } = process;
  const headless = platform === 'linux' && !env.DISPLAY && !env.WAYLAND_DISPLAY;
  if (headless || env.CI) return;
  const [command, ...args] =
    platform === 'darwin'
      ? ['open', address]
      : platform === 'win32'
        ? ['cmd', '/c', 'start', '', address]
        : ['xdg-open', address];
  if (!command) return;
  spawn(command, args, { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

if (isStale(root)) {
  console.log('Building the site. This takes a few seconds.');
  const build = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (build.status !== 0) process.exit(build.status ?? 1);
}

const { origin } = await serve(`${root}/dist`, usualPort).catch(() => serve(`${root}/dist`));
const address = `${origin}/`;
console.log(`Switched Live is at ${address}\nPress Ctrl+C to stop.`);
openBrowser(address);
