import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { generateSW } from 'workbox-build';

/** Files that no page shows: the picture of the readme, and what only a server reads. */
const LEFT_OUT = ['wiring-page.png', 'sw.js', '_headers'];

/**
 * Writes the service worker of a built site: after the first visit every page opens without a network.
 *
 * Addresses are kept relative to the worker, so the site may live in any folder. The same site gives the same worker,
 * so a learner is told of an update only when something has changed.
 * @param folder the built site
 * @returns how many files it keeps, and their bytes
 * @throws Error when a file is too large to be kept
 */
export async function writeWorker(folder: string): Promise<{ count: number; size: number }> {
  const { count, size, warnings } = await generateSW({
    globDirectory: folder,
    globPatterns: ['**/*.{html,js,css,json,woff2,svg,png,webmanifest}'],
    globIgnores: LEFT_OUT,
    swDest: `${folder}/sw.js`,
    inlineWorkboxRuntime: true,
    sourcemap: false,
    mode: 'production',
    cacheId: 'switched-live',
    cleanupOutdatedCaches: true,
    // The first visit is served by it at once; a later version waits until the learner says so.
    clientsClaim: true,
    skipWaiting: false,
    directoryIndex: 'index.html',
    // What stands after the `?` is read by the page itself, never by a server.
    ignoreURLParametersMatching: [/./],
    // These names change with what is in them.
    dontCacheBustURLsMatching: /_astro\/[^/]+\.[\w-]{8}\.\w+$/,
    maximumFileSizeToCacheInBytes: 4_000_000,
    runtimeCaching: [
      {
        // An address that is not there: from the server where it can be reached, else our own page that helps.
        urlPattern: ({ request }) => request.mode === 'navigate',
        handler: 'NetworkOnly',
        options: { precacheFallback: { fallbackURL: '404.html' } },
      },
    ],
  });
  if (warnings.length > 0) throw new Error(warnings.join('\n'));
  return { count, size };
}

/** Makes the site work offline: writes `sw.js` once it is built. Its pages register it (`src/ui/shell/offline.ts`). */
export default function offline(): AstroIntegration {
  return {
    name: 'offline',
    hooks: {
      'astro:build:done': async ({ dir, logger }) => {
        const { count, size } = await writeWorker(fileURLToPath(dir));
        logger.info(`${count} files to keep for offline, ${(size / 1e6).toFixed(1)} MB`);
      },
    },
  };
}
