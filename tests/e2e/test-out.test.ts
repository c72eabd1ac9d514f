import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { loadOutline } from '../../src/files/site/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import {
  addressShown,
  checkButton,
  click,
  giveAnswer,
  itemAt,
  question,
  wrongAnswer,
} from './support/item.ts';

/** The part with the fewest objectives, so that the tests are short. */
const [part] = loadOutline()
  .parts.map(({ id, lessons }) => ({ id, lessons, count: lessons.flatMap((one) => one.objectives).length }))
  .filter(({ count }) => count > 0)
  .sort((a, b) => a.count - b.count);
if (!part) throw new Error('The course has no part with objectives.');

async function take(page: Page, right: (question: number) => boolean): Promise<void> {
  await page.getByRole('button', { name: 'Start the test' }).click();
  for (let k = 1; k <= (part?.count ?? 0); k++) {
    await page.getByText(`Question ${k} of ${part?.count}`).waitFor();
    const sheet = await question(page);
    expect(await sheet.getByRole('button', { name: /hint/ }).count()).toBe(0);
    const item = itemAt(await addressShown(page));
    await giveAnswer(sheet, item.form, right(k) ? item.answer : wrongAnswer(item), click);
    await checkButton(sheet).click();
  }
}

test('All right passes, and no help is offered on the way', async () => {
  const page = await openPage({ path: `/test-out/${part.id}/` });
  await page.locator('[data-ready="true"]').waitFor();
  await seeNoViolation(page, 'a test before it starts');
  await take(page, () => true);
  await page.getByRole('heading', { name: `Passed: ${part.count} of ${part.count} right` }).waitFor();
});

test('All wrong does not pass, and the result says which lessons to read', async () => {
  const page = await openPage({ path: `/test-out/${part.id}/` });
  await page.locator('[data-ready="true"]').waitFor();
  await take(page, () => false);
  await page.getByRole('heading', { name: `Not yet: 0 of ${part.count} right` }).waitFor();
  for (const { title, objectives } of part.lessons)
    if (objectives.length > 0)
      expect(await page.locator('.result').getByRole('link', { name: title, exact: true }).count()).toBe(1);
  await seeNoViolation(page, 'the result of a test');
});
