import { globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { weighPage } from '../../bench/scripts.ts';

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

test('A page of text ships at most 6 kB', () => {
  const texts = pages.filter((file) => !readFileSync(join(folder, file), 'utf8').includes('<astro-island'));
  expect(texts.length).toBeGreaterThan(75);
  expect(over(texts, 6000)).toEqual([]);
});

test('A wiring job ships at most 70 kB before it is used', () => {
  const jobs = pages.filter((file) => /^jobs\/[^/]+\/index\.html$/.test(file));
  expect(jobs.length).toBeGreaterThan(50);
  expect(over(jobs, 70_000)).toEqual([]);
});

test('The home page ships at most 30 kB', () => {
  expect(over(['index.html'], 30_000)).toEqual([]);
});
