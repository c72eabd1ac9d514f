import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { parseCoursework } from '../../src/files/coursework.ts';
import { writeCoursework } from '../../src/files/coursework-write.ts';
import { loadCourseworks } from '../../src/files/site/coursework.ts';
import {
  chooseFile,
  openEditor,
  openOnPhone,
  problems,
  saveButton,
  saved,
  seeSound,
} from './support/author.ts';
import { openPage } from './support/browser.ts';
import { tabTo } from './support/keys.ts';

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const tasks = (page: Page) => page.locator('.task .name b');

/** The name of what has the focus, as far as the page says it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLInputElement | null;
    const label =
      element?.labels?.[0]?.textContent ?? element?.getAttribute('aria-label') ?? element?.textContent;
    return (label ?? '').replace(/\s+/g, ' ').trim();
  });
const keyTo = (page: Page, name: string, key = 'Tab') =>
  tabTo(page, async () => (await focused(page)).startsWith(name), key);

test('A tutor puts a coursework together by keyboard alone, and a learner opens it', async () => {
  const page = await openEditor('coursework');
  await keyTo(page, 'Start a coursework');
  await page.keyboard.press('Enter');
  await keyTo(page, 'Title');
  await page.keyboard.type('A week on unvented');
  await keyTo(page, 'Lesson');
  // The radios are one stop; the arrows choose.
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await keyTo(page, 'Which one?');
  await page.keyboard.type('unvented complete');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => tasks(page).count()).toBe(1);
  await keyTo(page, 'Wiring job', 'Shift+Tab');
  await page.keyboard.press('ArrowLeft');
  await keyTo(page, 'About which system?');
  await page.keyboard.type('unvented three');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => tasks(page).count()).toBe(2);
  const second = await tasks(page).nth(1).textContent();
  await keyTo(page, 'task 2:', 'Shift+Tab');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => tasks(page).first().textContent()).toBe(second);
  await keyTo(page, 'Save the file', 'Shift+Tab');
  const { name, yaml } = await saved(page, () => page.keyboard.press('Enter'));
  const coursework = parseCoursework(yaml, name);
  expect(coursework.tasks.map(({ kind }) => kind)).toEqual(['questions', 'job']);
  expect(coursework).toMatchObject({
    id: 'a-week-on-unvented',
    title: 'A week on unvented',
    variants: 'own',
  });

  const address = await page.getByRole('link', { name: /^Open as learner AB-1/ }).getAttribute('href');
  const learner = await openPage({ path: address ?? '' });
  await learner.getByRole('heading', { name: 'A week on unvented' }).first().waitFor();
  await learner.getByText('AB-1').first().waitFor();
});

test('Three learners get three strips for a job, and a shared one when the class shares it', async () => {
  const page = await openEditor('coursework');
  await page.getByRole('button', { name: 'Start a coursework' }).click();
  await field(page, 'Title').fill('One job');
  await page.getByRole('radio', { name: 'Wiring job' }).check();
  await field(page, 'Which one?').fill('unvented put right');
  await page.locator('.picker li button').first().click();
  const wirings = async () => {
    await page.getByRole('button', { name: 'See three learners’ variants' }).click();
    await page.locator('dialog h3').nth(2).waitFor();
    const drawn = await page
      .locator('dialog section')
      .evaluateAll((all) =>
        all.map((one) =>
          [...one.querySelectorAll('.wire path')].map((path) => path.getAttribute('d')).join(),
        ),
      );
    await page.keyboard.press('Escape');
    return new Set(drawn).size;
  };
  expect(await wirings()).toBe(3);
  await page.getByRole('radio', { name: 'The class shares them' }).check();
  expect(await wirings()).toBe(1);
});

test('Every sample of the course opens, has nothing to put right and is saved as it was', async () => {
  const page = await openEditor('coursework');
  for (const sample of loadCourseworks()) {
    await chooseFile(page, `${sample.id}.yaml`, writeCoursework(sample));
    await expect.poll(() => field(page, 'Title').first().inputValue()).toBe(sample.title);
    await expect.poll(() => problems(page).allInnerTexts()).toEqual([]);
    const { yaml } = await saved(page, () => saveButton(page).click());
    expect(parseCoursework(yaml, sample.id)).toEqual(sample);
  }
});

test('What does not hold is told beside its field and in the summary, and nothing is lost on a reload', async () => {
  const page = await openEditor('coursework');
  await page.getByRole('button', { name: 'Start a coursework' }).click();
  await page.locator('.picker li button').first().click();
  await page.getByLabel(/^Attempts/).fill('11');
  await page.getByLabel(/^Opens/).fill('2027-03-31');
  await field(page, 'Title').fill('Too many');
  await expect
    .poll(() => problems(page).allInnerTexts())
    .toEqual([
      expect.stringMatching(
        /^Task 1, attempts\s+Expected a whole number of attempts from 1 to 10; found 11\.$/,
      ),
    ]);
  expect(await page.getByLabel(/^Attempts/).getAttribute('aria-invalid')).toBe('true');
  await page.reload();
  await expect.poll(() => page.getByLabel(/^Attempts/).inputValue()).toBe('11');
  await page.getByRole('button', { name: /^Remove: / }).click();
  await page.keyboard.press('Control+z');
  await expect.poll(() => tasks(page).count()).toBe(1);
});

test.each([
  ['a laptop', openEditor],
  ['a phone', openOnPhone],
])(
  'Axe finds nothing in the coursework editor on %s, nothing is too small and nothing hangs over',
  async (_, open) => {
    const page = await open('coursework');
    await seeSound(page, 'empty');
    await page.getByRole('button', { name: 'Start a coursework' }).click();
    for (const sort of ['Lesson', 'Questions', 'Wiring job', 'Callout', 'Own fault']) {
      await page.getByRole('radio', { name: sort }).check();
      await page.locator('.picker li button').first().click();
    }
    await saveButton(page).click();
    await seeSound(page, 'five tasks and no title');
    await field(page, 'Title').first().fill('Five tasks');
    await page.getByRole('button', { name: 'See three learners’ variants' }).first().click();
    await page.locator('dialog h3').nth(2).waitFor();
    await seeSound(page, 'variants');
  },
);

test('The tutor’s desk leads to the three editors and names the schemas', async () => {
  const page = await openPage({ path: '/author/' });
  for (const kind of ['coursework', 'job', 'stage'])
    expect(await page.locator(`main a[href="/author/${kind}/"]`).count()).toBe(1);
  for (const link of await page.locator('main a[href^="/schema/"]').all()) {
    const answer = await page.request.get((await link.getAttribute('href')) ?? '');
    expect(await answer.json()).toHaveProperty('$schema');
  }
  await seeSound(page, 'the desk');
});
