import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { seeNoViolation } from './axe.ts';
import { type Opening, openPage } from './browser.ts';
import { LAPTOP, PHONE } from './job.ts';
import { sidewaysScroll, smallTargets } from './measure.ts';

export type Editor = 'job' | 'coursework' | 'stage';

/** Opens an editor of the tutor's desk and waits until it answers. */
export async function openEditor(editor: Editor, opening: Partial<Opening> = {}): Promise<Page> {
  const page = await openPage({ ...LAPTOP, reducedMotion: true, path: `/author/${editor}/`, ...opening });
  await page.locator('[data-ready]').waitFor();
  return page;
}

/** The same page on the smallest phone. */
export const openOnPhone = (editor: Editor): Promise<Page> => openEditor(editor, PHONE);

/** The file that a button offers: its name and what it says. */
export async function saved(page: Page, press: () => Promise<void>): Promise<{ name: string; yaml: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  const stream = await download.createReadStream();
  return { name: download.suggestedFilename(), yaml: await text(stream) };
}

export const saveButton = (page: Page) => page.getByRole('button', { name: 'Save the file' });

/** Axe, targets and reflow, as the page stands. */
export async function seeSound(page: Page, where: string): Promise<void> {
  expect([where, await sidewaysScroll(page)]).toEqual([where, 0]);
  expect([where, ...(await smallTargets(page))]).toEqual([where]);
  await seeNoViolation(page, where);
}

/** Offers a file to the editor, as its button would. */
export const chooseFile = (page: Page, name: string, content: string) =>
  page
    .getByLabel('A file to open')
    .setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(content) });

/** Everything that is to be put right, as the summary names it. */
export const problems = (page: Page) => page.locator('.problems li');
