import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unzipSync } from 'fflate';
import type { BrowserContext } from 'playwright-core';
import type { PackedWork, Standard } from '../../../src/ui/lms/setting.ts';
import { builtSite } from '../../../tools/package/built.ts';
import { type Files, packageOf, readFiles } from '../../../tools/package/pack.ts';

/** Where a platform may put a package: deep, and with characters that are encoded. */
export const ODD = '/content.d/7%20b/~x/0/';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};
const typeOf = (name: string): string => types[extname(name)] ?? 'application/octet-stream';

let site: Files | undefined;

/** The site as packages hold it: PACKAGE_SITE, where it is built elsewhere, or built here when it is not up to date. */
export function packageSite(): Files {
  site ??= readFiles(
    process.env.PACKAGE_SITE ?? builtSite(fileURLToPath(new URL('../../..', import.meta.url))),
  );
  return site;
}

/** A package, unpacked. */
export const unpacked = (standard: Standard, work: PackedWork): Files =>
  new Map(Object.entries(unzipSync(packageOf(standard, packageSite(), { work, version: '0.1.0' }))));

/** Serves files by their exact names, as the strictest platform does: no index of a folder, nothing else at all. */
export async function serveExactly(files: Files) {
  const missed: string[] = [];
  const server = createServer((request, response) => {
    const address = (request.url ?? '').split('?', 1)[0] ?? '';
    const name = address.startsWith(ODD) ? decodeURIComponent(address.slice(ODD.length)) : undefined;
    const bytes = name === undefined ? undefined : files.get(name);
    if (bytes && name) {
      response
        .writeHead(200, { 'Content-Type': typeOf(name), 'X-Content-Type-Options': 'nosniff' })
        .end(bytes);
      return;
    }
    // Browsers ask for it unasked, whatever a page says.
    if (address !== '/favicon.ico') missed.push(address);
    response.writeHead(404).end();
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    missed,
    close: () => new Promise<void>((done) => server.close(() => done()).closeAllConnections()),
  };
}

/** Puts a package's files beside the site under test, so that a page there may frame them. */
export async function besideSite(context: BrowserContext, files: Files): Promise<void> {
  await context.route(`**${ODD}**`, (route) => {
    const name = decodeURIComponent(new URL(route.request().url()).pathname.slice(ODD.length));
    const bytes = files.get(name);
    return bytes
      ? route.fulfill({ body: Buffer.from(bytes), contentType: typeOf(name) })
      : route.fulfill({ status: 404, body: 'There is no such file.' });
  });
}

/** What one file names: an address, and whether it must be a file of the package. */
const patterns: readonly (readonly [RegExp, RegExp])[] = [
  [
    /\.html$/,
    /\s(?:href|src|action|formaction|component-url|renderer-url|before-hydration-url|poster)="([^"]*)"/g,
  ],
  // Data handed to what wakes later.
  [/\.html$/, /&quot;((?:\.\.?\/)+[^&]*)&quot;/g],
  [/\.css$/, /url\(["']?([^"')]+)["']?\)/g],
  [/\.js$/, /(?:\bimport\(|\bfrom\s*|\bimport\s*)[`"'](\.[^`"']+)[`"']/g],
  [/\.js$/, /new URL\([`"']([^`"']+)[`"'],/g],
];

/** Addresses in a package that lead to no file of it, as `file: address`. */
export function lost(files: Files): string[] {
  const found: string[] = [];
  for (const [file, bytes] of files) {
    // A link that leads a reader to another site is not fetched.
    const text = Buffer.from(bytes)
      .toString()
      .replace(/(<a\b[^>]*\shref=")https:[^"]*/g, '$1');
    for (const [kind, pattern] of patterns) {
      if (!kind.test(file)) continue;
      for (const [, address = ''] of text.matchAll(pattern)) {
        if (address === '' || /^(?:#|data:|mailto:|\?)/.test(address)) continue;
        const path = address.replaceAll('&#38;', '&').split(/[?#]/, 1)[0] ?? '';
        const goal = posix.join(posix.dirname(file), decodeURIComponent(path));
        const isRoot = path === '../' && file.endsWith('.js');
        if (/^[a-z]+:|^\//i.test(address) || (!isRoot && !files.has(goal))) found.push(`${file}: ${address}`);
      }
    }
  }
  return [...new Set(found)];
}
