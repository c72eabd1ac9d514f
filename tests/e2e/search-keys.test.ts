import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { SearchFile } from '../../src/files/site/searchIndex.ts';
import { openPage } from './support/browser.ts';

const folder = process.env.SITE_FOLDER ?? 'dist';
const results = '#found a';

test.each(['/', '/glossary/', '/jobs/unvented-three-port/'])(
  'From %s the slash key leads to the search box, and what is typed is looked for',
  async (path) => {
    const page = await openPage({ path });
    // The button for the colours shows when the keys are listened to.
    await page.locator('.theme:not([hidden])').waitFor({ state: 'attached' });
    await page.keyboard.press('/');
    await page.waitForURL('**/search/**');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('q');
    await page.keyboard.type('tundish');
    await page.locator(results).first().waitFor();
  },
);

test('A slash that is typed into a box stays there', async () => {
  const page = await openPage({ path: '/search/' });
  await page.locator('#q').focus();
  await page.keyboard.type('on/off');
  expect(await page.locator('#q').inputValue()).toBe('on/off');
});

test('The arrow keys go through the results and back to the box, and Enter opens one', async () => {
  const page = await openPage({ path: '/search/#q' });
  await page.locator('#q').focus();
  await page.keyboard.type('valve');
  await page.locator(results).nth(2).waitFor();
  const focused = () =>
    page.evaluate(
      (list) => [...document.querySelectorAll(list)].indexOf(document.activeElement as Element),
      results,
    );
  await expect.poll(() => page.locator('#count').textContent()).toContain('found');
  for (const [key, at] of [
    ['ArrowDown', 0],
    ['ArrowDown', 1],
    ['ArrowUp', 0],
    ['End', (await page.locator(results).count()) - 1],
    ['Home', 0],
  ] as const) {
    await page.keyboard.press(key);
    expect(await focused(), key).toBe(at);
  }
  await page.keyboard.press('ArrowUp');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('q');
  await page.keyboard.press('ArrowDown');
  const goal = await page.locator(results).first().getAttribute('href');
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => `${url.pathname}${url.search}${url.hash}` === goal);
});

test('Nothing is fetched for the search until it is used', async () => {
  const asked: string[] = [];
  const page = await openPage({
    path: '/search/',
    prepare: (context) => context.on('request', (request) => asked.push(new URL(request.url()).pathname)),
  });
  await page.waitForLoadState('networkidle');
  expect(asked.filter((path) => path.endsWith('index.json'))).toEqual([]);
  await page.locator('#q').focus();
  await expect.poll(() => asked.filter((path) => path.endsWith('index.json')).length).toBe(1);
});

test('The words that were found are marked in the results and on the page they lead to', async () => {
  const page = await openPage({ path: '/search/?q=tundish' });
  await page.locator(results).first().waitFor();
  expect((await page.locator('#found mark').first().textContent())?.toLowerCase()).toContain('tundish');
  await page
    .locator(results, { hasText: /^Tundish/ })
    .first()
    .click();
  await page.waitForURL('**/glossary/?hl=*');
  const marked = () =>
    page.evaluate(() =>
      [...(CSS.highlights.get('found') ?? [])].map((range) => range.toString().toLowerCase()),
    );
  await expect.poll(marked).toContain('tundish');
  expect(new Set(await marked())).toEqual(new Set(['tundish']));
});

test('Every result leads to a page of the site, and to a place that is on it', () => {
  const { entries } = JSON.parse(readFileSync(join(folder, 'search/index.json'), 'utf8')) as SearchFile;
  const pages = new Map(
    globSync('**/index.html', { cwd: folder }).map((name) => [
      `/${name}`.replace(/index\.html$/, ''),
      readFileSync(join(folder, name), 'utf8'),
    ]),
  );
  const lost = entries.filter(({ to }) => {
    const [path = '', anchor] = to.split('#', 2);
    const text = pages.get(path);
    return text === undefined || (anchor !== undefined && !text.includes(`id="${anchor}"`));
  });
  expect(lost.map(({ to }) => to)).toEqual([]);
});
