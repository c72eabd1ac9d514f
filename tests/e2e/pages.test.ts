import { expect, test } from 'vitest';
import { openPage } from './support/browser.ts';
import { openJob, ready, rightWires } from './support/job.ts';
import { tabTo } from './support/keys.ts';

const right = rightWires();

test('On paper the wiring page lists every wire and shows no button', async () => {
  const page = await openJob({ wires: right });
  const list = page.getByRole('list', { name: 'Wiring list', includeHidden: true });
  expect(await list.isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await list.isVisible()).toBe(true);
  expect(await list.locator('li').count()).toBe(right.length);
  const buttons = await page.locator('button:visible, select:visible, input:visible').allInnerTexts();
  expect(buttons).toEqual([]);
  const paper = await page.pdf({ format: 'A4' });
  expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
  const sheets = paper.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  expect(sheets).toBeGreaterThan(0);
  expect(sheets).toBeLessThanOrEqual(3);
});

test('On paper a lesson shows its text and no button', async () => {
  const page = await openPage({ path: '/lessons/follow-the-call/' });
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
  expect(await page.locator('button:visible').count()).toBe(0);
});

test('Searching for a nickname finds its entry, and the keyboard opens it', async () => {
  const page = await openPage({ path: '/search/' });
  await page.keyboard.press('/');
  await page.keyboard.type('Y-plan');
  const hit = page.getByRole('list', { name: 'Results' }).getByRole('link').first();
  await hit.waitFor();
  expect(await page.locator('#found li').first().textContent()).toMatch(/Y[- ]plan/i);
  const goal = await hit.getAttribute('href');
  await tabTo(page, () => hit.evaluate((link) => link === document.activeElement));
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => url.pathname + url.search + url.hash === goal);
});

test('A search that finds nothing says so', async () => {
  const page = await openPage({ path: '/search/?q=zzzzqq' });
  await expect.poll(() => page.getByRole('status').textContent()).toContain('Nothing found');
});

test('A lesson reads with scripts switched off', async () => {
  const page = await openPage({ path: '/lessons/follow-the-call/', scripts: false });
  expect((await page.getByRole('article').textContent())?.length).toBeGreaterThan(1500);
  await page.getByRole('link', { name: /^Back:/ }).click();
  expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
});

test('A job read with scripts switched off says what it needs', async () => {
  const page = await openPage({ path: '/jobs/unvented-three-port/', scripts: false });
  const says = page.locator('noscript p').last();
  expect(await says.isVisible()).toBe(true);
  expect(await says.textContent()).toContain('Wiring needs JavaScript');
});

test('From the home page a learner reaches the job in one step, and the first lesson in one', async () => {
  const page = await openPage({ path: '/' });
  await page.getByRole('link', { name: 'Start wiring' }).click();
  await ready(page);
  await page.goBack();
  await page.locator('main a[href*="/lessons/"]').first().click();
  expect(await page.getByRole('article').count()).toBe(1);
});

test('The choice of colours lasts over pages', async () => {
  const page = await openPage({ path: '/' });
  await page.getByRole('button', { name: 'More' }).click();
  const theme = page.getByRole('button', { name: /Colours:/ });
  await theme.click();
  await theme.click();
  expect(await theme.textContent()).toContain('Dark');
  await page.goto('/glossary/');
  expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
});

test('An address that is not there leads to a page that helps', async () => {
  const page = await openPage({ path: '/no-such-page/', expected: /404/ });
  expect(await page.locator('main').getByRole('link').count()).toBeGreaterThan(0);
});
