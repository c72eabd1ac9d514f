import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { weighPage } from '../../bench/scripts.ts';
import { lessonsOf } from '../../src/course/outline.ts';
import { loadOutline } from '../../src/files/site/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';
import { sidewaysScroll, smallTargets } from './support/measure.ts';

const outline = loadOutline();
const lessons = lessonsOf(outline);
const [first, second, third] = lessons;
if (!first || !second || !third) throw new Error('expected three lessons');

const tile = (page: Page, slug: string) => page.locator(`[data-lesson="${slug}"]`);
const step = (page: Page) => page.locator('[data-step]');

/** Answers as an earlier visit would have left them, written by the site's own store. */
async function answer(page: Page, objectives: readonly string[], right: boolean, times: number, daysAgo = 0) {
  await page.evaluate(
    async ({ objectives, right, times, daysAgo }) => {
      const open = indexedDB.open('switched-live');
      const database = await new Promise<IDBDatabase>((done, failed) => {
        open.onsuccess = () => done(open.result);
        open.onerror = () => failed(open.error);
      });
      const write = database.transaction('trials', 'readwrite');
      const start = Date.now() - daysAgo * 86_400_000;
      objectives.forEach((objective, one) => {
        for (let n = 0; n < times; n++)
          write.objectStore('trials').add({
            at: start + one * 1000 + n * 60_000,
            objective,
            item: `live-terminals/three-port/${n}/1`,
            method: 'live-terminals',
            right,
            attempt: 1,
            hints: 0,
            shown: 0,
            took: 9000,
            mode: 'lesson',
          });
      });
      await new Promise((done) => {
        write.oncomplete = done;
      });
      database.close();
    },
    { objectives, right, times, daysAgo },
  );
}

const idsOf = (lesson: (typeof lessons)[number]) => lesson.objectives.map(({ id }) => id);

test('The home page is the map of the course, with every part and every lesson, with scripts switched off too', async () => {
  const page = await openPage({ path: '/', scripts: false });
  for (const { title, id } of outline.parts) {
    expect(await page.locator(`#part-${id}`).getByRole('heading').textContent()).toContain(title);
    expect(await page.locator(`a[href$="/test-out/${id}/"]`).count()).toBe(1);
  }
  for (const { slug } of lessons) expect(await tile(page, slug).getByRole('link').isVisible()).toBe(true);
  expect(await step(page).getAttribute('href')).toBe(`/lessons/${first.slug}/`);
});

test('A newcomer finds the first lesson, the wiring, the tools and the cautions without a search', async () => {
  const page = await openPage({ path: '/', ...LAPTOP });
  const main = page.getByRole('main');
  expect(await main.getByRole('link', { name: 'Start wiring' }).getAttribute('href')).toContain('/jobs/');
  for (const name of ['Jobs', 'Systems', 'Drawings', 'Bench', 'What if?', 'Calculators'])
    expect(await page.getByRole('list', { name: 'Tools' }).getByRole('link', { name }).count(), name).toBe(1);
  expect(await main.getByText('it does not certify').count()).toBe(1);
  expect(await main.getByRole('link', { name: 'Read the cautions' }).count()).toBe(1);
});

test('The next step is in sight as the page opens, on a laptop and on a phone', async () => {
  for (const size of [LAPTOP, PHONE]) {
    const page = await openPage({ path: '/', ...size });
    const box = await step(page).boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThanOrEqual(size.height);
    expect(box?.height ?? 0).toBeGreaterThanOrEqual(48);
  }
});

test('The map shows how well each lesson is known, in a word, and how far the live gets', async () => {
  const page = await openPage({ path: '/' });
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
  await answer(page, idsOf(first), true, 4);
  await answer(page, idsOf(second), false, 2);
  await page.reload();
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Solid');
  expect(await tile(page, second.slug).locator('.state').textContent()).toBe('Shaky');
  expect(await tile(page, third.slug).locator('.state').textContent()).toBe('Not tried');
  expect(await page.locator('[data-tally]').textContent()).toContain(`1 of ${lessons.length} lessons solid`);
  const [part] = outline.parts;
  expect(await page.locator(`#part-${part?.id}`).getAttribute('class')).toMatch(/\bfed\b/);
  expect(await page.locator(`#part-${part?.id}`).getAttribute('class')).not.toMatch(/\bmade\b/);
});

test('A part that is solid closes its contact, and the live goes on to the next', async () => {
  const [part, next] = outline.parts;
  const page = await openPage({ path: '/' });
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
  await answer(page, part?.lessons.flatMap(idsOf) ?? [], true, 4);
  await page.reload();
  await expect.poll(() => page.locator(`#part-${part?.id}`).getAttribute('class')).toMatch(/\bmade\b/);
  expect(await page.locator(`#part-${next?.id}`).getAttribute('class')).toMatch(/\bfed\b/);
});

test('What was solid long ago is due', async () => {
  const page = await openPage({ path: '/' });
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
  await answer(page, idsOf(first), true, 4, 300);
  await page.reload();
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Due');
});

test('Continue leads on past what is solid, from the header of any page', async () => {
  const page = await openPage({ path: '/' });
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
  await answer(page, idsOf(first), true, 4);
  await page.goto('/glossary/');
  await page.getByRole('banner').getByRole('link', { name: 'Continue' }).click();
  await page.waitForURL(`**/lessons/${second.slug}/`);
});

test('The route that is chosen stays chosen, marks what is off it and moves the next step', async () => {
  const route = outline.routes.find(({ lessons: own }) => own.length < lessons.length);
  if (!route) throw new Error('expected a route');
  const page = await openPage({ path: '/' });
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
  await page.locator(`[name="route"][value="${route.id}"]`).check();
  await expect.poll(() => step(page).getAttribute('href')).toBe(`/lessons/${route.lessons[0]}/`);
  const off = lessons.find(({ slug }) => !route.lessons.includes(slug));
  expect(
    await tile(page, off?.slug ?? '')
      .getByText('Off your route')
      .isVisible(),
  ).toBe(true);
  await page.reload();
  await expect.poll(() => page.locator(`[name="route"][value="${route.id}"]`).isChecked()).toBe(true);
});

test.each(outline.routes.map(({ id, title }) => [title, id]))(
  'The page of the route “%s” lists its lessons, and following it leads to the first',
  async (_, id) => {
    const route = outline.routes.find((one) => one.id === id);
    const page = await openPage({ path: `/routes/${id}/` });
    expect(await page.locator('.lesson-strip [data-lesson]').count()).toBe(route?.lessons.length);
    await page.getByRole('link', { name: 'Follow this route' }).click();
    await page.waitForURL(`**/lessons/${route?.lessons[0]}/`);
  },
);

test.each(['/', '/lessons/', ...outline.routes.map(({ id }) => `/routes/${id}/`)])(
  '%s breaks no rule of WCAG 2.2 AA with every mark on it, in either theme, and nothing hangs over the side',
  async (path) => {
    const page = await openPage({ path, ...LAPTOP, reducedMotion: true });
    await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
    await answer(page, idsOf(first), true, 4, 300);
    await answer(page, idsOf(second), false, 2);
    await answer(page, idsOf(third), true, 4);
    await page.reload();
    await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Due');
    const [route] = outline.routes;
    const chooser = page.locator(`[name="route"][value="${route?.id}"]`);
    if ((await chooser.count()) > 0) await chooser.check();
    await seeNoViolation(page, 'wide');
    for (const width of [768, 360]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await sidewaysScroll(page), `${width} px`).toBe(0);
      expect(await smallTargets(page), `${width} px`).toEqual([]);
    }
    await seeNoViolation(page, 'narrow');
  },
);

test('The home page fetches at most 30 kB of JavaScript, the map filled in', async () => {
  const asked = new Set<string>();
  const page = await openPage({
    path: '/',
    prepare: (context) => context.on('request', (request) => asked.add(new URL(request.url()).pathname)),
  });
  await expect.poll(() => tile(page, first.slug).locator('.state').textContent()).toBe('Not tried');
  await page.waitForLoadState('networkidle');
  const folder = process.env.SITE_FOLDER ?? 'dist';
  const scripts = [...asked].filter((path) => path.endsWith('.js')).map((path) => join(folder, path));
  expect(scripts.length).toBeGreaterThan(1);
  const bytes = scripts.map((path) => gzipSync(readFileSync(path), { level: 9 }).length);
  expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(30_000);
  expect(weighPage(folder, '').atOnce).toBeLessThanOrEqual(6000);
});
