import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { isStale } from '../../tools/stale.ts';

let root: string;

/** Writes a file and dates it and its folder, in seconds. */
function put(folder: string, name: string, time: number): void {
  mkdirSync(join(root, folder), { recursive: true });
  writeFileSync(join(root, folder, name), '');
  utimesSync(join(root, folder, name), time, time);
  utimesSync(join(root, folder), time, time);
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'stale-'));
  put('src', 'page.astro', 100);
});

afterEach(() => rmSync(root, { recursive: true }));

test('a site that has not been built is stale', () => {
  expect(isStale(root)).toBe(true);
});

test('a site built after the last change is fresh', () => {
  put('dist', 'index.html', 200);
  expect(isStale(root)).toBe(false);
});

test('a site is stale once its content has changed', () => {
  put('dist', 'index.html', 200);
  put('content', 'lesson.mdx', 300);
  expect(isStale(root)).toBe(true);
});

test('a site built elsewhere has an age of its own, and may be made from more', () => {
  put('dist', 'index.html', 200);
  expect(isStale(root, 'packed')).toBe(true);
  put('packed', 'index.html', 200);
  put('tools/package', 'site.ts', 300);
  expect(isStale(root, 'packed')).toBe(false);
  expect(isStale(root, 'packed', ['tools/package'])).toBe(true);
});
