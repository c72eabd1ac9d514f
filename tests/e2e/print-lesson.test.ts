import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { loadLessons } from '../../src/files/site/lessons.ts';
import { openPage } from './support/browser.ts';

const lessons = loadLessons();
const folded = lessons.find(({ body }) => body.includes('<Try>'));
const linked = lessons.find(({ body }) => body.includes('/glossary/#'));

async function onPaper(slug: string | undefined): Promise<Page> {
  const page = await openPage({ path: `/lessons/${slug}/`, theme: 'dark' });
  await page.evaluate(() => {
    document.documentElement.dataset.theme = 'dark';
  });
  await page.emulateMedia({ media: 'print' });
  return page;
}

test('On paper a lesson has no way around the site and no buttons', async () => {
  const page = await onPaper(lessons[0]?.slug);
  expect(await page.locator('nav:visible').count()).toBe(0);
  expect(await page.locator('button:visible').count()).toBe(0);
  expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
});

test('On paper what is folded away on the screen is open', async () => {
  const page = await onPaper(folded?.slug);
  const answer = page.locator('article .try details > *:not(summary)').first();
  expect(await answer.evaluate((element) => element.getBoundingClientRect().height)).toBeGreaterThan(10);
  expect(await answer.evaluate((element) => element.checkVisibility({ contentVisibilityAuto: true }))).toBe(
    true,
  );
});

test('On paper a link is its words, and no definition hangs over the text', async () => {
  const page = await onPaper(linked?.slug);
  const term = page.locator('article a.term').first();
  expect(await term.evaluate((link) => getComputedStyle(link).textDecorationLine)).toBe('none');
  await term.focus();
  expect(await page.locator('.tip:visible').count()).toBe(0);
});

test('On paper the dark colours give way to black on white', async () => {
  const page = await onPaper(lessons[0]?.slug);
  const [ink, ground] = await page.evaluate(() => {
    const { color, backgroundColor } = getComputedStyle(document.body);
    return [color, backgroundColor];
  });
  expect([ink, ground]).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
});

/** One in three: printing is what takes the browser longest, and all lessons share their styles. */
const some = lessons.filter((_, k) => k % 3 === 0);

test('Lessons print on A4, on ten sheets at most', async () => {
  for (const { slug } of some) {
    const page = await onPaper(slug);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      slug,
    ).toBe(0);
    const paper = await page.pdf({ format: 'A4', preferCSSPageSize: true });
    const sheets = paper.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(sheets, slug).toBeGreaterThan(0);
    expect(sheets, slug).toBeLessThanOrEqual(10);
    await page.context().close();
  }
}, 300_000);
