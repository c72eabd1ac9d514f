import { globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { weighPage } from '../../bench/scripts.ts';
import { openPage } from './support/browser.ts';

/* Bytes of JavaScript, gzip, that a page asks for before anybody has touched it. */
const folder = process.env.SITE_FOLDER ?? 'dist';
const pages = globSync('**/index.html', { cwd: folder });
const over = (list: readonly string[], most: number): string[] =>
  list
    .map((file) => ({ page: dirname(file), bytes: weighPage(folder, dirname(file)).atOnce }))
    .filter(({ bytes }) => bytes > most)
    .map(({ page, bytes }) => `${page}: ${bytes}`);

test('A lesson ships at most 30 kB before it is touched', () => {
  const lessons = pages.filter((file) => /^lessons\/[^/]+\/index\.html$/.test(file));
  expect(lessons.length).toBeGreaterThanOrEqual(35);
  expect(over(lessons, 30_000)).toEqual([]);
});

test('What the browser itself asks for on a lesson stays in that budget until it is touched', async () => {
  const [heaviest] = pages
    .filter((file) => /^lessons\/[^/]+\/index\.html$/.test(file))
    .map((file) => ({ file, bytes: readFileSync(join(folder, file)).length }))
    .sort((a, b) => b.bytes - a.bytes);
  const asked = new Set<string>();
  const page = await openPage({
    path: `/${heaviest?.file}`,
    prepare: (context) => context.on('request', (request) => asked.add(new URL(request.url()).pathname)),
  });
  await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
  await page.waitForLoadState('networkidle');
  const bytes = [...asked]
    .filter((path) => path.endsWith('.js'))
    .map((path) => gzipSync(readFileSync(join(folder, path)), { level: 9 }).length);
  expect(bytes.length).toBeGreaterThan(0);
  expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(30_000);
});

test('A page of text ships at most 6 kB', () => {
  const texts = pages.filter((file) => !readFileSync(join(folder, file), 'utf8').includes('<astro-island'));
  expect(texts.length).toBeGreaterThan(75);
  expect(over(texts, 6000)).toEqual([]);
});

test('A wiring job ships at most 10 kB before anybody stirs, and wakes with at most 70 kB', () => {
  const jobs = pages.filter((file) => /^jobs\/[^/]+\/index\.html$/.test(file));
  expect(jobs.length).toBeGreaterThan(50);
  expect(over(jobs, 10_000)).toEqual([]);
  const waking = jobs.map((file) => weighPage(folder, dirname(file)).waking);
  expect(Math.min(...waking)).toBeGreaterThan(10_000);
  expect(Math.max(...waking)).toBeLessThanOrEqual(70_000);
});

test('The home page ships at most 30 kB', () => {
  expect(over(['index.html'], 30_000)).toEqual([]);
});

/* The search page itself is tried in search-keys.test.ts. */
test('No other page fetches what the search needs', async () => {
  const asked: string[] = [];
  const page = await openPage({
    path: '/',
    prepare: (context) => context.on('request', (request) => asked.push(new URL(request.url()).pathname)),
  });
  const [lesson] = pages.filter((file) => /^lessons\/[^/]+\/index\.html$/.test(file));
  for (const path of [`/${lesson}`, '/jobs/three-port/', '/glossary/', '/practice/']) {
    await page.waitForLoadState('networkidle');
    await page.goto(path);
  }
  await page.waitForLoadState('networkidle');
  expect(asked.filter((path) => path.endsWith('.js')).length).toBeGreaterThan(3);
  expect(asked.filter((path) => path.startsWith('/search/') || path.includes('lunr'))).toEqual([]);
});
