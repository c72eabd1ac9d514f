import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { writeWorker } from '../../tools/offline.ts';
import { keepBefore, ready, rightWires, WHOLE } from './support/job.ts';
import { kept, openCopy } from './support/offline.ts';
import { judgeButton, seeAccepted } from './support/verdict.ts';

const folder = process.env.SITE_FOLDER ?? 'dist';

/** The first page of each kind: of each folder of the site, its list and one below it. */
function everyKind(): string[] {
  const seen = new Map<string, string>();
  for (const name of globSync('**/index.html', { cwd: folder }).sort()) {
    const steps = name.split('/').slice(0, -1);
    const kind = `${steps[0] ?? ''}/${steps.length}`;
    if (!seen.has(kind)) seen.set(kind, `/${steps.join('/')}${steps.length > 0 ? '/' : ''}`);
  }
  return [...seen.values()];
}

/** Milliseconds: the whole site is fetched, in a browser that other work may slow down. */
const PATIENCE = 90_000;
vi.setConfig({ testTimeout: 4 * PATIENCE });

const notice = '#notice';
const offered = 'Update ready';

test('After the first visit every kind of page opens without a network, and an unknown address leads to our own page', async () => {
  const { page, unplug } = await openCopy();
  await expect.poll(() => page.locator(notice).textContent(), { timeout: PATIENCE }).toContain('offline');
  await kept(page);
  await unplug();
  const kinds = everyKind();
  expect(kinds.length).toBeGreaterThan(15);
  for (const path of kinds) {
    await page.goto(path);
    const title = /<title>([^<]*)<\/title>/.exec(readFileSync(join(folder, path, 'index.html'), 'utf8'))?.[1];
    const plain = title?.replaceAll('&amp;', '&').replaceAll('&#39;', "'");
    expect(await page.title(), path).toBe(plain);
  }
  await page.goto('/no-such-page/');
  expect(await page.locator('main').getByRole('link').count()).toBeGreaterThan(0);
});

test('That the site is ready to use offline is said once', async () => {
  const { page } = await openCopy();
  await expect.poll(() => page.locator(notice).textContent(), { timeout: PATIENCE }).toContain('Ready');
  await page.getByRole('button', { name: 'Close' }).click();
  expect(await page.locator(notice).textContent()).toBe('');
  await page.goto('/glossary/');
  await page.waitForTimeout(4000);
  expect(await page.locator(notice).textContent()).toBe('');
});

test('Without a network a wiring is judged, and the search finds', async () => {
  const right = rightWires();
  const { page, unplug } = await openCopy(keepBefore(WHOLE, right));
  await expect.poll(() => page.locator(notice).textContent(), { timeout: PATIENCE }).toContain('Ready');
  await unplug();
  await page.goto(`/jobs/${WHOLE}/`);
  await ready(page);
  await judgeButton(page).click();
  await seeAccepted(page, right);
  await page.goto('/search/?q=tundish');
  await page.getByRole('list', { name: 'Results' }).getByRole('link').first().waitFor();
  expect(await page.locator('#found').textContent()).toContain('Tundish');
});

test('A new version waits until the learner takes it, and what was wired stays', async () => {
  const right = rightWires();
  const { folder: copy, page } = await openCopy(keepBefore(WHOLE, right));
  await expect.poll(() => page.locator(notice).textContent(), { timeout: PATIENCE }).toContain('Ready');
  const file = join(copy, 'cautions/index.html');
  writeFileSync(file, readFileSync(file, 'utf8').replace(/<h1[^>]*>[^<]*/, '<h1>The new cautions'));
  await writeWorker(copy);

  await page.goto('/cautions/');
  expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toContain('new');
  await expect.poll(() => page.locator(notice).textContent(), { timeout: PATIENCE }).toContain(offered);
  await page.getByRole('button', { name: 'Use it now' }).click();
  await expect
    .poll(() => page.getByRole('heading', { level: 1 }).textContent(), { timeout: PATIENCE })
    .toBe('The new cautions');

  await page.goto(`/jobs/${WHOLE}/`);
  await ready(page);
  await judgeButton(page).click();
  await seeAccepted(page, right);
});

test('The same site gives the same worker, so nobody is told of an update that is none', async () => {
  const { folder: copy, page } = await openCopy();
  await page.close();
  const first = readFileSync(join(copy, 'sw.js'), 'utf8');
  await writeWorker(copy);
  expect(readFileSync(join(copy, 'sw.js'), 'utf8')).toBe(first);
});

test('What a phone needs to install the site is there: its name, its start and its icons', async () => {
  const { page } = await openCopy();
  const manifest = (await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
    return (await fetch(link?.href ?? '')).json();
  })) as {
    name: string;
    start_url: string;
    display: string;
    icons: { src: string; sizes: string; purpose: string }[];
  };
  expect(manifest).toMatchObject({ name: 'Switched Live', display: 'standalone' });
  // Sizes that browsers ask of an installable site: 192 and 512 pixels (web.dev, "Installable manifest"; from memory).
  for (const size of ['192x192', '512x512']) expect(manifest.icons.map(({ sizes }) => sizes)).toContain(size);
  expect(manifest.icons.map(({ purpose }) => purpose)).toContain('maskable');
  for (const { src, sizes } of manifest.icons.filter(({ sizes }) => sizes !== 'any')) {
    const real = await page.evaluate(async (name) => {
      const image = new Image();
      image.src = new URL(name, document.querySelector<HTMLLinkElement>('link[rel="manifest"]')?.href).href;
      await image.decode();
      return `${image.naturalWidth}x${image.naturalHeight}`;
    }, src);
    expect(real).toBe(sizes);
  }
});
