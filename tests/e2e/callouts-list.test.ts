import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { dailyCallout } from '../../src/course/callouts/daily.ts';
import { loadCallouts } from '../../src/files/site/callouts.ts';
import { siteShelf } from '../../src/files/site/shelf.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';
import { leaveVisit, visitOf } from './support/visit.ts';

const files = loadCallouts();
const [first] = files;
const open = (page: Page) => page.locator('[data-callout]:visible');

test('Every callout is listed with what the customer says, and nothing of its fault, without JavaScript', async () => {
  const page = await openPage({ path: '/callouts/', ...LAPTOP, scripts: false });
  expect(await open(page).count()).toBe(files.length);
  const html = await page.content();
  for (const { id, customer, after } of files) {
    const card = page.locator(`[data-callout="callout/${id}"]`);
    expect(await card.locator('q').textContent(), id).toBe(customer);
    expect(html.includes(after.slice(0, 40)), id).toBe(false);
  }
});

test('The list is narrowed by level and by system, and says so when nothing is left', async () => {
  const page = await openPage({ path: '/callouts/', ...LAPTOP });
  const system = page.getByLabel('System').last();
  await system.waitFor();
  for (const of of [1, 2, 3]) {
    await page.getByRole('group', { name: 'Level' }).getByRole('radio').nth(of).check();
    expect(await open(page).count()).toBe(files.filter((file) => file.level === of).length);
  }
  await page.getByRole('group', { name: 'Level' }).getByRole('radio').first().check();
  const id = first?.system ?? '';
  await system.selectOption(id);
  expect(await open(page).count()).toBe(files.filter((file) => file.system === id).length);
  const absent = [1, 2, 3].find((of) => !files.some((file) => file.system === id && file.level === of));
  if (absent === undefined) return;
  await page.getByRole('group', { name: 'Level' }).getByRole('radio').nth(absent).check();
  expect(await page.getByText('No house with this system on this level').isVisible()).toBe(true);
});

test('Each card says how this device’s learner stands with it', async () => {
  const page = await openPage({ path: '/callouts/', ...LAPTOP });
  const card = page.locator(`[data-callout="callout/${first?.id}"]`);
  await expect.poll(() => card.locator('.word').textContent()).toBe('Not tried');
  if (!first) return;
  await leaveVisit(page, visitOf(first.id, [{ do: 'operate', settings: {} }]));
  await page.reload();
  await expect.poll(() => card.locator('.word').textContent()).toBe('Begun');
});

test('Today’s callout is named, and it is the one that its page opens', async () => {
  const page = await openPage({ path: '/callouts/', ...LAPTOP });
  const day = await page.evaluate(() => {
    const now = new Date();
    return [now.getFullYear(), now.getMonth() + 1, now.getDate()]
      .map((part) => String(part).padStart(2, '0'))
      .join('-');
  });
  const today = dailyCallout(day, siteShelf().layoutIds);
  const title = siteShelf().layout(today.system).title;
  await expect.poll(() => page.locator('[data-today]').textContent()).toBe(`${title}, level ${today.level}.`);
});

test('Another callout is made on the system and level that are chosen, a fresh one each time', async () => {
  const page = await openPage({ path: '/callouts/', ...LAPTOP });
  const form = page.locator('#endless');
  const sent = async () => {
    await form.getByLabel('System').selectOption('three-port');
    await form.getByRole('radio').nth(1).check();
    await form.getByRole('button', { name: 'Send me out' }).click();
    await page.waitForURL(/\/callouts\/visit\/#callout\/three-port\/\d+\/2$/);
    return page.url();
  };
  const one = await sent();
  await page.goto('/callouts/');
  expect(await sent()).not.toBe(one);
});

test('The list of callouts passes axe and fits a phone', async () => {
  const page = await openPage({ path: '/callouts/', ...PHONE });
  await page.locator('[data-standing]').first().waitFor();
  await seeNoViolation(page, 'the list of callouts');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
});

test('Callouts and the aid are in the header and among the tools of the home page', async () => {
  const page = await openPage({ path: '/', ...LAPTOP });
  const tools = page.getByRole('list', { name: 'Tools' });
  for (const [name, to] of [
    ['Callouts', '/callouts/'],
    ['On site', '/aid/'],
  ] as const) {
    expect(await tools.getByRole('link', { name }).getAttribute('href')).toContain(to);
    expect(await page.getByRole('navigation', { name: 'Main' }).locator(`a[href$="${to}"]`).count()).toBe(1);
  }
});
