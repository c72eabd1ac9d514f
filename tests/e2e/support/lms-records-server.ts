import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import { onTestFinished } from 'vitest';
import type { Records } from './lms-records.ts';

/** What lets a page of another site ask: a platform must send this, or nothing of cmi5 works from a browser. */
const allowed = {
  'Access-Control-Allow-Origin': '*',
  'Access-Control-Allow-Headers': 'authorization, content-type, x-experience-api-version',
  'Access-Control-Allow-Methods': 'GET, PUT, POST, OPTIONS',
  // What is sent while a page goes away cannot wait for leave: the browser must have it already.
  'Access-Control-Max-Age': '600',
};

/** Serves a record store until the test ends; its address, without a slash at the end. */
export async function serveRecords(records: Records): Promise<string> {
  const server = createServer(async (request, response) => {
    const { method = 'GET', url = '/', headers } = request;
    if (method === 'OPTIONS') return void response.writeHead(204, allowed).end();
    const answer = records.handle({
      method,
      url: new URL(url, 'http://records.test').href,
      headers: Object.fromEntries(Object.entries(headers).map(([name, value]) => [name, String(value)])),
      body: await text(request),
    });
    response.writeHead(answer.status, { ...allowed, 'Content-Type': 'application/json' }).end(answer.body);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}
