import { expect, test } from 'vitest';
import { parseAddress } from '../../src/course/items/index.ts';
import { methodOf } from '../../src/course/progress/mix.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import {
  addressShown,
  addressWith,
  checkButton,
  click,
  giveAnswer,
  itemAt,
  question,
  resultOf,
  wrongAnswer,
} from './support/item.ts';
import { PHONE } from './support/job.ts';

const ready = '[data-ready="true"]';

test('An address leads to its question, and the address bar follows the question shown', async () => {
  const address = addressWith('mark');
  const page = await openPage({ path: `/practice/#item=${address}` });
  expect(await addressShown(page)).toBe(address);
  const sheet = await question(page);
  const item = itemAt(address);
  await giveAnswer(sheet, item.form, item.answer, click);
  await checkButton(sheet).click();
  await sheet.getByRole('button', { name: 'Another question' }).click();
  await expect.poll(() => addressShown(page)).not.toBe(address);
  expect(new URL(page.url()).hash).toBe(`#item=${await addressShown(page)}`);
});

test('An address that is none says so', async () => {
  const page = await openPage({ path: '/practice/#item=nothing/there/1/1' });
  await page.locator(ready).waitFor();
  expect(await page.getByRole('alert').textContent()).toContain('no question at this address');
});

test('A begun answer comes back after a reload', async () => {
  const address = addressWith('number');
  const page = await openPage({ path: `/practice/#item=${address}` });
  await (await question(page)).getByRole('textbox').fill('12');
  await page.waitForTimeout(300);
  await page.reload();
  expect(await (await question(page)).getByRole('textbox').inputValue()).toBe('12');
});

test('A mixed set of five has no two neighbours of one method, goes on after a reload, and ends with a summary', async () => {
  const page = await openPage({ path: '/practice/' });
  await page.locator(ready).waitFor();
  await page.getByRole('radio', { name: '5' }).check();
  await page.getByRole('button', { name: 'Start a mixed set' }).click();
  const methods: string[] = [];
  for (let k = 1; k <= 5; k++) {
    await page.getByText(`Question ${k} of 5`).waitFor();
    const sheet = await question(page);
    const address = await addressShown(page);
    const item = itemAt(address);
    const found = parseAddress(address);
    methods.push(found ? methodOf(found.task) : '');
    if (k === 2) {
      await page.reload();
      expect(await addressShown(page)).toBe(address);
    }
    await giveAnswer(sheet, item.form, k === 1 ? wrongAnswer(item) : item.answer, click);
    await checkButton(sheet).click();
    await resultOf(sheet).waitFor();
    await sheet.getByRole('button', { name: k < 5 ? 'Next question' : 'See how it went' }).click();
  }
  for (const [k, method] of methods.entries()) expect(method).not.toBe(methods[k - 1]);
  await page.getByRole('heading', { name: '4 of 5 right at the first answer' }).waitFor();
  expect(await page.getByText('✕ not yet').count()).toBe(1);
  await seeNoViolation(page, 'the summary');
});

test('With nothing due, revision says so and offers something else', async () => {
  const page = await openPage({ path: '/practice/#revise' });
  await page.locator(ready).waitFor();
  expect(await page.locator('main').textContent()).toContain('Nothing is due');
  expect(await page.getByRole('button', { name: 'Start a mixed set' }).count()).toBe(1);
});

test('The start of practice has no barrier, and one objective can be taken by itself', async () => {
  const page = await openPage({ ...PHONE, path: '/practice/' });
  await page.locator(ready).waitFor();
  await seeNoViolation(page, 'practice');
  await page.locator('summary').first().tap();
  await page
    .getByRole('button', { name: /^You can/ })
    .first()
    .tap();
  await question(page);
  expect(new URL(page.url()).hash).toMatch(/^#objective=[a-z-]+&item=/);
});
