import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { wireKey } from '../../src/engine/model/wiring.ts';
import { parseCoursework } from '../../src/files/coursework.ts';
import { writeCoursework } from '../../src/files/coursework-write.ts';
import { writeResult } from '../../src/files/result.ts';
import { chooseFile, openEditor, saved } from './support/author.ts';
import { openPage } from './support/browser.ts';
import { CODE, goTo, gradeAgain, handIn, itemOf, overview, WEEK, wiresOf } from './support/coursework.ts';
import { checkButton, click, giveAnswer } from './support/item.ts';
import { terminal } from './support/job.ts';
import { judgeButton, verdict } from './support/verdict.ts';

/* From the tutor's desk to the mark book, through files and links alone, as three people do it. */

/** Opens the mark book with a coursework file and results. */
async function openBook(yaml: string, results: Readonly<Record<string, string>>): Promise<Page> {
  const page = await openPage({ path: '/mark-book/' });
  await page.mouse.move(50, 60);
  await page.locator('astro-island[data-awake]').waitFor({ state: 'attached' });
  const file = (name: string, words: string) => ({
    name,
    mimeType: 'text/plain',
    buffer: Buffer.from(words),
  });
  await page.getByLabel('Choose the file').setInputFiles(file('week.yaml', yaml));
  await page
    .getByLabel('Choose files')
    .setInputFiles(Object.entries(results).map(([name, words]) => file(name, words)));
  await page.getByRole('group', { name: 'The class, learner by learner' }).waitFor();
  await page.locator('[data-busy="false"]').waitFor();
  return page;
}

test('A tutor sets it, a learner does it and hands it in, the mark book comes to the same marks', async () => {
  const desk = await openEditor('coursework');
  await chooseFile(desk, 'week.yaml', writeCoursework(WEEK));
  const save = desk.getByRole('button', { name: /^Save the file/ });
  const { name, yaml } = await saved(desk, () => save.click());
  expect(parseCoursework(yaml, name)).toEqual(WEEK);
  const link = await desk.getByRole('link', { name: /^Open as learner/ }).getAttribute('href');

  const learner = await openPage({ path: (link ?? '').replace(/code=[A-Z0-9-]+/, `code=${CODE}`) });
  await overview(learner);
  await goTo(learner, 'live/1', click);
  const item = itemOf('live/1', 1);
  await giveAnswer(learner.locator('.question'), item.form, item.answer, click);
  await checkButton(learner.locator('.question')).click();
  await learner.locator('.question [data-right="true"]').waitFor();
  await learner.locator('.slot .back a').click();

  await goTo(learner, 'wire/1', click);
  await judgeButton(learner).click();
  await verdict(learner).getByText('Not yet').first().waitFor();
  for (const [a, b] of wiresOf('wire/1').missing) {
    await terminal(learner, a).click();
    await terminal(learner, b).click();
  }
  await judgeButton(learner).click();
  await verdict(learner).getByText('Accepted').first().waitFor();
  await learner.locator('.slot .back a').click();
  const result = await handIn(learner, click);
  const again = gradeAgain(result);
  expect(again.map(({ right }) => right)).toEqual([true, false, true]);
  expect(result.work.map(({ right }) => right)).toEqual([true, false, true]);
  const [, , wired] = result.work;
  expect(wired?.kind === 'job' && wired.wires.map(wireKey)).toHaveLength(
    wiresOf('wire/1').given.length + wiresOf('wire/1').missing.length,
  );

  // A friend hands the same work in under another code, and says that all of it is right.
  const copied = {
    ...result,
    learner: { code: 'ZZ99' },
    work: result.work.map((work) => ({ ...work, right: true })),
  };
  const book = await openBook(yaml, {
    'own.json': writeResult(result, result.made),
    'copied.json': writeResult(copied, result.made),
  });
  const row = (code: string) =>
    book.locator('tbody tr').filter({ has: book.getByRole('button', { name: code, exact: true }) });
  const right = async (code: string) =>
    (await row(code).locator('.sum').textContent())?.split('/')[0]?.trim();
  expect(await right(CODE)).toBe('2');
  expect(await right('ZZ99')).toBe('0');
  const looks = (await book.getByRole('region', { name: 'Worth a look' }).textContent()) ?? '';
  expect(looks).toContain('Made for another variant');
  expect(looks).toContain('ZZ99');

  const [file] = await Promise.all([
    book.waitForEvent('download'),
    book.getByRole('button', { name: 'Save marks (CSV)' }).click(),
  ]);
  expect(await text(await file.createReadStream())).toMatch(new RegExp(`${CODE}.*\\b2\\b`));
}, 120_000);
