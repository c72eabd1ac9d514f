import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { loadGlossary } from '../../src/files/site/glossary.ts';
import { loadLessons } from '../../src/files/site/lessons.ts';
import { openPage } from './support/browser.ts';
import { PHONE } from './support/job.ts';

/** The lesson with the most links to terms, and what each is said to mean. */
const lesson = loadLessons().toSorted(
  (a, b) => b.body.split('/glossary/#').length - a.body.split('/glossary/#').length,
)[0];
const path = `/lessons/${lesson?.slug}/`;
const terms = new Map(loadGlossary().map(({ id, says }) => [id, says]));

const links = (page: Page) => page.locator('article a.term');
const shown = (page: Page) => page.locator('.tip:visible');

test.each([
  ['with scripts', true],
  ['with scripts switched off', false],
])('Pointing at a term shows what it means, %s', async (_, scripts) => {
  const page = await openPage({ path, scripts });
  const link = links(page).first();
  const id = (await link.getAttribute('href'))?.split('#')[1] ?? '';
  expect(await shown(page).count()).toBe(0);
  await link.hover();
  await shown(page).waitFor();
  expect(await shown(page).textContent()).toContain(terms.get(id));
});

test('Moving the focus to a term shows what it means, with scripts switched off too', async () => {
  const page = await openPage({ path, scripts: false });
  await links(page).first().focus();
  await shown(page).waitFor();
});

test('A definition stays while it is pointed at, goes with Escape and comes back another time', async () => {
  // WCAG 2.2, success criterion 1.4.13: dismissible, hoverable, persistent.
  const page = await openPage({ path });
  const link = links(page).first();
  await link.hover();
  await shown(page).waitFor();
  await shown(page).hover();
  await page.waitForTimeout(800);
  expect(await shown(page).count()).toBe(1);
  await page.keyboard.press('Escape');
  await expect.poll(() => shown(page).count()).toBe(0);
  await page.mouse.move(2, 2);
  await link.hover();
  await expect.poll(() => shown(page).count()).toBe(1);
});

test.each([
  ['a phone', 360],
  ['a small phone', 320],
  ['a laptop', 1366],
])('No definition is cut off at the edge of the window of %s', async (_, width) => {
  const page = await openPage({ path, width, height: 700, reducedMotion: true });
  const count = await links(page).count();
  expect(count).toBeGreaterThan(1);
  for (let at = 0; at < count; at++) {
    await links(page).nth(at).focus();
    await expect.poll(() => shown(page).count()).toBe(1);
    const box = await shown(page).boundingBox();
    const name = await links(page).nth(at).textContent();
    expect(box, name ?? '').toMatchObject({ x: expect.any(Number) });
    expect(box?.x ?? -1, `${name}: left`).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 0), `${name}: right`).toBeLessThanOrEqual(width);
    expect(box?.y ?? -1, `${name}: top`).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 0), `${name}: foot`).toBeLessThanOrEqual(700);
  }
});

test('The first tap on a term shows what it means, the second goes to the glossary', async () => {
  const page = await openPage({ path, ...PHONE });
  const link = links(page).first();
  await link.tap();
  await shown(page).waitFor();
  expect(new URL(page.url()).pathname).toContain('/lessons/');
  await link.tap();
  await page.waitForURL((url) => url.pathname.endsWith('/glossary/'));
});

test('A screen reader is told what a term means', async () => {
  const page = await openPage({ path });
  const said = await links(page).evaluateAll((all) =>
    all.map(
      (link) => document.getElementById(link.getAttribute('aria-describedby') ?? '')?.textContent ?? '',
    ),
  );
  expect(said.length).toBeGreaterThan(1);
  for (const words of said) expect(words.length).toBeGreaterThan(20);
});
