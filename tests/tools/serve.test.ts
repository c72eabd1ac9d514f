import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Served, serve } from '../../tools/serve.ts';

const outside = mkdtempSync(join(tmpdir(), 'serve-'));
let site: Served;

beforeAll(async () => {
  const root = join(outside, 'site');
  mkdirSync(join(root, 'lesson'), { recursive: true });
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  writeFileSync(join(root, 'index.html'), 'home');
  writeFileSync(join(root, '404.html'), 'no such page');
  writeFileSync(join(root, 'lesson', 'index.html'), 'lesson');
  writeFileSync(join(root, 'a.js'), 'export {}');
  writeFileSync(join(root, 'a.woff2'), '');
  site = await serve(root);
});

afterAll(async () => {
  await site.close();
  rmSync(outside, { recursive: true });
});

const get = (path: string) => fetch(site.origin + path, { redirect: 'manual' });

/** Sends a request line as it stands: fetch would tidy the address first. */
function raw(path: string): Promise<string> {
  const { hostname, port } = new URL(site.origin);
  return new Promise((done, failed) => {
    let text = '';
    const socket = connect(Number(port), hostname, () => {
      socket.write(`GET ${path} HTTP/1.1\r\nHost: ${hostname}\r\nConnection: close\r\n\r\n`);
    });
    socket.on('data', (chunk) => {
      text += chunk.toString();
    });
    socket.on('end', () => done(text)).on('error', failed);
  });
}

test('a folder answers with its index page', async () => {
  expect(await (await get('/')).text()).toBe('home');
  expect(await (await get('/lesson/?from=home')).text()).toBe('lesson');
});

test('a folder without its slash is sent to the address with one, so that relative links work', async () => {
  const response = await get('/lesson?from=home');
  expect(response.status).toBe(301);
  expect(response.headers.get('location')).toBe('/lesson/?from=home');
});

// Types from memory of the IANA media types registry.
test.each([
  ['/', 'text/html; charset=utf-8'],
  ['/a.js', 'text/javascript; charset=utf-8'],
  ['/a.woff2', 'font/woff2'],
])('%s is sent as %s', async (path, type) => {
  expect((await get(path)).headers.get('content-type')).toBe(type);
});

test('an address that is not there gets the site’s own page and a 404', async () => {
  const response = await get('/nowhere/');
  expect(response.status).toBe(404);
  expect(await response.text()).toBe('no such page');
});

test.each(['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '//../secret.txt', '/%00'])(
  'nothing outside the folder is given out for %s',
  async (path) => {
    const answer = await raw(path);
    expect(answer).toMatch(/^HTTP\/1\.1 404 /);
    expect(answer).not.toContain('secret');
  },
);

test('a broken address is refused and the server lives on', async () => {
  expect(await raw('/%zz')).toMatch(/^HTTP\/1\.1 400 /);
  expect((await get('/')).status).toBe(200);
});

test('a redirect never leads to another site', async () => {
  expect(await raw('//lesson')).toMatch(/\r\nLocation: \/lesson\/\r\n/);
});
