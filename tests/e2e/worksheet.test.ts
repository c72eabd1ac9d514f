import { expect, test } from 'vitest';
import { lessonsOf } from '../../src/course/outline.ts';
import { loadOutline } from '../../src/files/site/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';

const [lesson] = lessonsOf(loadOutline()).filter(({ objectives }) => objectives.length > 1);
if (!lesson) throw new Error('No lesson has two objectives.');
const path = `/lessons/${lesson.slug}/worksheet/`;

test('A worksheet has four to eight questions and an answer to each, without scripts too', async () => {
  const page = await openPage({ path, scripts: false });
  const questions = await page.getByRole('region', { name: /^Question \d/ }).count();
  expect(questions).toBeGreaterThanOrEqual(4);
  expect(questions).toBeLessThanOrEqual(8);
  expect(await page.getByRole('region', { name: /^Answer \d/ }).count()).toBe(questions);
});

test('New questions make another sheet, and its address brings it back', async () => {
  const page = await openPage({ path });
  const paper = page.getByRole('region', { name: 'Questions', exact: true });
  const before = await paper.textContent();
  await page.getByRole('button', { name: 'New questions' }).click();
  await expect.poll(() => paper.textContent()).not.toBe(before);
  const after = await paper.textContent();
  expect(new URL(page.url()).hash).toMatch(/^#sheet=\d+$/);
  await page.reload();
  await expect.poll(() => paper.textContent()).toBe(after);
  await seeNoViolation(page, 'a worksheet');
});

test('On paper the answers start a page of their own, and the controls stay off it', async () => {
  const page = await openPage({ path });
  await page.emulateMedia({ media: 'print' });
  const answers = page.getByRole('region', { name: 'Answers', exact: true });
  expect(await answers.evaluate((section) => getComputedStyle(section).breakBefore)).toBe('page');
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
});
