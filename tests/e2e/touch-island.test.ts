import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openPage } from './support/browser.ts';
import { keepBefore } from './support/job.ts';
import { lessonWith } from './support/lesson-with.ts';

/** A live circuit with three steps or more: Back and Next say how often they were pressed. */
const lesson = lessonWith('Live', (tag) => (tag.match(/says:/g)?.length ?? 0) >= 3);
const circuit = (page: Page) => page.locator('.live-circuit').nth(lesson.at);
const next = (page: Page) => circuit(page).getByRole('button', { name: 'Next' });
const count = (page: Page) => circuit(page).locator('.count');
const isScript = (url: string) => /\/_astro\/.*\.js/.test(url);

async function seeStep(page: Page, step: number) {
  await circuit(page)
    .locator('.count', { hasText: new RegExp(`^${step} of`) })
    .waitFor();
  // A press that counted twice would be seen a moment later.
  await page.waitForTimeout(300);
  expect(await count(page).textContent()).toMatch(new RegExp(`^${step} of`));
}

/** The scripts of the island come late, as on a slow line. */
const slowly = (page: Page) =>
  page.route('**/_astro/*.js', async (route) => {
    await new Promise((done) => setTimeout(done, 700));
    await route.continue();
  });

test('Nothing of a live circuit is fetched before it is touched, and the first click counts', async () => {
  const fetched: string[] = [];
  const page = await openPage({
    path: lesson.path,
    prepare: (context) => context.on('request', (request) => fetched.push(request.url())),
  });
  await page.waitForLoadState('networkidle');
  const before = fetched.filter(isScript);
  expect(before.filter((url) => /Live|View|Inside|client\.svelte/.test(url))).toEqual([]);
  expect(await count(page).textContent()).toMatch(/^1 of/);
  await next(page).click();
  await seeStep(page, 2);
  expect(fetched.filter(isScript).length).toBeGreaterThan(before.length);
});

test('The first tap of a finger counts', async () => {
  const page = await openPage({ path: lesson.path, width: 360, height: 800, touch: true });
  await next(page).tap();
  await seeStep(page, 2);
});

test.each(['Enter', 'Space'])(
  'The first press of %s counts, and the focus stays where it was',
  async (key) => {
    const page = await openPage({ path: lesson.path });
    await next(page).focus();
    await page.keyboard.press(key);
    await seeStep(page, 2);
    expect(await next(page).evaluate((button) => button === document.activeElement)).toBe(true);
    await page.keyboard.press(key);
    await seeStep(page, 3);
  },
);

test('On a slow line a click made while the circuit is on its way is kept, and counts once', async () => {
  const page = await openPage({ path: lesson.path });
  await slowly(page);
  await next(page).click();
  expect(await count(page).textContent()).toMatch(/^1 of/);
  await seeStep(page, 2);
});

test('On a slow line two clicks are two steps, in their order', async () => {
  const page = await openPage({ path: lesson.path });
  await slowly(page);
  await next(page).click();
  await next(page).click();
  await seeStep(page, 3);
});

test('On a slow line Enter pressed at once is kept, and the focus with it', async () => {
  const page = await openPage({ path: lesson.path });
  await slowly(page);
  await next(page).focus();
  await page.keyboard.press('Enter');
  await seeStep(page, 2);
  expect(await next(page).evaluate((button) => button === document.activeElement)).toBe(true);
});

test('What folds open by itself does so at the first click, and once', async () => {
  const page = await openPage({ path: lesson.path });
  const switches = circuit(page).locator('details.switches');
  const open = await switches.evaluate((details: HTMLDetailsElement) => details.open);
  await switches.locator('summary').click();
  await page.locator('astro-island[data-awake]').first().waitFor();
  expect(await switches.evaluate((details: HTMLDetailsElement) => details.open)).toBe(!open);
});

test('A wiring page sleeps until somebody stirs, and then answers as if it had been awake', async () => {
  const page = await openPage({ path: '/jobs/three-port/' });
  await page.waitForLoadState('networkidle');
  const awake = page.locator('[data-ready]');
  expect(await awake.count()).toBe(0);
  // The very first thing: a key, no mouse.
  await page.keyboard.press('Tab');
  await awake.waitFor();
});

test('A wiring page wakes by itself where wires are kept, or come with the address', async () => {
  const wires = [['spur/L', 'strip/1']] as const;
  const page = await openPage({ path: '/jobs/three-port/', prepare: keepBefore('three-port', wires) });
  await page.locator('[data-ready]').waitFor();
  const linked = await openPage({ path: '/jobs/three-port/#w=' });
  await linked.locator('[data-ready]').waitFor();
});
