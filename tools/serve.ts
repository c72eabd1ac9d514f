import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, resolve, sep } from 'node:path';
import { createGzip } from 'node:zlib';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.avif': 'image/avif',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.pdf': 'application/pdf',
  '.zip': 'application/zip',
};

const isText = /^(?:text\/|application\/(?:json|manifest|xml)|image\/svg)/;

/** A running server. */
export type Served = {
  /** For example `http://127.0.0.1:4321`, without a slash at the end. */
  readonly origin: string;
  close(): Promise<void>;
};

async function kindOf(path: string): Promise<'file' | 'folder' | 'none'> {
  const found = await stat(path).catch(() => undefined);
  if (found?.isFile()) return 'file';
  return found?.isDirectory() ? 'folder' : 'none';
}

function send(request: IncomingMessage, response: ServerResponse, status: number, path: string): void {
  const type = types[extname(path)] ?? 'application/octet-stream';
  // Text goes packed, as any web server sends it.
  const packed = isText.test(type) && /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));
  response.writeHead(status, {
    'Content-Type': type,
    'Cache-Control': 'no-cache',
    'X-Content-Type-Options': 'nosniff',
    ...(isText.test(type) && { Vary: 'Accept-Encoding' }),
    ...(packed && { 'Content-Encoding': 'gzip' }),
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  const file = createReadStream(path).on('error', () => response.destroy());
  if (packed) file.pipe(createGzip()).pipe(response);
  else file.pipe(response);
}

function refuse(response: ServerResponse, status: number, says: string): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' }).end(says);
}

async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(response, 405, 'Only GET and HEAD.');
  const [address = '/', query] = (request.url ?? '/').split('?', 2);
  let name: string;
  try {
    name = decodeURIComponent(address);
  } catch {
    return refuse(response, 400, 'That address is not well formed.');
  }
  const path = resolve(join(root, name));
  const inside = path === root || path.startsWith(root + sep);
  const kind = inside && !name.includes('\0') ? await kindOf(path) : 'none';

  if (kind === 'file' && !name.endsWith('/')) return send(request, response, 200, path);
  const index = join(path, 'index.html');
  if (kind === 'folder' && (await kindOf(index)) === 'file') {
    if (name.endsWith('/')) return send(request, response, 200, index);
    // One leading slash only: `//host/` would send the browser to another site.
    const slashed = `/${address.replace(/^\/+/, '')}/`;
    response.writeHead(301, { Location: query === undefined ? slashed : `${slashed}?${query}` }).end();
    return;
  }
  const missing = join(root, '404.html');
  if ((await kindOf(missing)) === 'file') return send(request, response, 404, missing);
  refuse(response, 404, 'There is no such page.');
}

/**
 * Serves a folder of plain files to this machine alone.
 * @param folder the folder to serve
 * @param port the port to listen on; 0 takes any free one
 * @throws when the port is taken
 */
export async function serve(folder: string, port = 0): Promise<Served> {
  const root = resolve(folder);
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => response.destroy());
  });
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', listening);
  });
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}
