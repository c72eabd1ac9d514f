import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { lessonsOf } from '../../src/course/outline.ts';
import { loadOutline } from '../../src/files/site/course.ts';
import { openPage } from './support/browser.ts';
import { checkButton, click, giveAnswer, itemAt, resultOf } from './support/item.ts';
import { withSetting } from './support/lms.ts';
import { launchQuery, makeRecords, type Records } from './support/lms-records.ts';
import { serveRecords } from './support/lms-records-server.ts';

const lesson = lessonsOf(loadOutline()).find(
  ({ objectives: [first] }) => first?.tasks[0]?.make === 'live-terminals',
);
if (!lesson) throw new Error('No lesson begins with live terminals.');
const [objective] = lesson.objectives;

/**
 * Launches the course as a platform of cmi5 does, whose record store lives at another address: a real one, for what is
 * sent while a page goes away comes from the browser itself.
 */
async function launch(records: Records): Promise<Page> {
  const store = await serveRecords(records);
  return openPage({
    width: 1366,
    height: 768,
    path: `/launch/cmi5/${launchQuery(store)}`,
    expected: new RegExp(`${store}|http://college\\.test/`),
    prepare: async (context) => {
      await withSetting(context, { standard: 'cmi5', work: { kind: 'course', title: 'Switched Live' } });
      await context.route('http://college.test/**', (route) =>
        route.fulfill({
          contentType: 'text/html',
          body: '<!doctype html><title>Back at the platform</title>',
        }),
      );
    },
  });
}
const reported = (page: Page) => page.locator('#reported').textContent();

async function answer(page: Page) {
  const site = page.frameLocator('#site');
  await site.locator('main').waitFor();
  await site.locator('body').evaluate((_, to) => location.assign(to), `/lessons/${lesson?.slug}/`);
  const check = site.locator(`[data-objective="${objective?.id}"]`);
  await check.getByRole('button', { name: /hint/ }).focus();
  await check.locator('.player[aria-busy="false"]').waitFor();
  const link = await check.getByRole('link', { name: 'Link to this question' }).getAttribute('href');
  const item = itemAt(decodeURIComponent(link?.split('#item=')[1] ?? ''));
  await giveAnswer(check, item.form, item.answer, click);
  await checkButton(check).click();
  await expect.poll(() => resultOf(check).getAttribute('data-right')).toBe('true');
}

test('a session is begun, answers are told, leaving ends it and leads back; the next session knows all', async () => {
  const records = makeRecords({ returnURL: 'http://college.test/course' });
  const page = await launch(records);
  await expect.poll(() => reported(page)).toMatch(/^Reported/);
  expect(records.verbs()).toEqual(['initialized']);
  await answer(page);
  await expect.poll(() => records.verbs()).toEqual(['initialized', 'answered']);
  await expect
    .poll(() => records.documents.get('switched-live'))
    .toMatchObject({ bookmark: `/lessons/${lesson.slug}/`, passed: false });
  await page.getByRole('button', { name: 'Save and leave' }).click();
  await page.waitForURL('http://college.test/course');
  expect(records.verbs()).toEqual(['initialized', 'answered', 'terminated']);
  expect(records.breaches()).toEqual([]);

  records.relaunch();
  const next = await launch(records);
  await next.frameLocator('#site').locator(`[data-objective="${objective?.id}"]`).waitFor();
  await expect.poll(() => reported(next)).toMatch(/^Reported/);
  await next
    .frameLocator('#site')
    .locator('body')
    .evaluate(() => location.assign('/progress/'));
  const glance = next.frameLocator('#site').getByRole('region', { name: 'At a glance' });
  // One answer with its first step shown: begun, and not solid yet.
  await expect.poll(() => glance.locator('.count').nth(1).textContent()).toBe('1');
  // Closing the window ends the session as well.
  await next.goto('about:blank');
  await expect.poll(() => records.verbs()).toEqual(['initialized', 'terminated']);
  expect(records.breaches()).toEqual([]);
});

test('a reload cannot use the launch again, and says what to do', async () => {
  const records = makeRecords();
  const page = await launch(records);
  await expect.poll(() => reported(page)).toMatch(/^Reported/);
  await page.reload();
  await page.getByRole('heading', { name: 'Not connected' }).waitFor();
  expect(await page.locator('#why').textContent()).toMatch(/handed out.*open the activity there again/s);
  expect(records.breaches()).toEqual([]);
});

test('opened for review nothing is told but that it began and ended', async () => {
  const records = makeRecords({ launchMode: 'Review' });
  const page = await launch(records);
  await expect.poll(() => reported(page)).toBe('Opened for review: nothing is reported');
  await answer(page);
  await page.goto('about:blank');
  await expect.poll(() => records.verbs()).toEqual(['initialized', 'terminated']);
  expect(records.breaches()).toEqual([]);
});

test('a record store that fails is told of, and gets it all when it works again', async () => {
  const records = makeRecords();
  const page = await launch(records);
  await expect.poll(() => reported(page)).toMatch(/^Reported/);
  records.failing.answer = () => ({ status: 503, body: '"too busy"' });
  await answer(page);
  await expect.poll(() => reported(page)).toBe('Not reported');
  expect(await page.locator('#notice').textContent()).toContain('too busy');
  records.failing.answer = undefined;
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(() => records.verbs()).toEqual(['initialized', 'answered']);
  expect(records.breaches()).toEqual([]);
});
