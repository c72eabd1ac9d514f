import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download, Locator, Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { loadStages, type StagePage } from '../../../src/files/site/stage.ts';
import { type Opening, openPage } from './browser.ts';
import { LAPTOP } from './job.ts';

export const WHY = '/stage/script/why-the-two-port/';
export const why = loadStages().find(({ id }) => id === 'why-the-two-port') as StagePage;

export async function openStage(path: string, more: Partial<Opening> = {}): Promise<Page> {
  const page = await openPage({ path, ...LAPTOP, reducedMotion: true, ...more });
  await page.locator('.stage[data-ready] .slide').waitFor();
  return page;
}
export const caption = (page: Page) => page.locator('.screen [data-caption]').textContent();
export const number = (page: Page) => page.locator('.screen .slide').getAttribute('data-slide');

export async function boxOf(target: Locator) {
  const box = await target.boundingBox();
  if (!box) throw new Error(`${target} is not on the page`);
  return box;
}

/** Presses keys and sees which slide comes. */
export async function after(page: Page, ...keys: string[]): Promise<string | null> {
  for (const key of keys) await page.keyboard.press(key);
  return number(page);
}

export async function bytesOf(download: Download): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'stage-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const path = join(folder, 'file');
  await download.saveAs(path);
  return readFile(path);
}

export async function made(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const coming = page.waitForEvent('download', { timeout: 120_000 });
  await page.getByRole('button', { name: button, exact: true }).click();
  const download = await coming;
  return { name: download.suggestedFilename(), bytes: await bytesOf(download) };
}
