import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { inject, onTestFinished } from 'vitest';
import { type Served, serve } from '../../../tools/serve.ts';

/** The built site in a folder of its own, served from an address of its own, in a browser that may keep it. */
export interface Copy {
  readonly folder: string;
  readonly page: Page;
  /** Takes the server away: nothing can be fetched any more. */
  readonly unplug: () => Promise<void>;
}

/**
 * Copies the built site, serves the copy and opens its home page with service workers allowed. All of it is put away
 * when the test ends.
 * @param prepare what to put in place before the first page loads
 */
export async function openCopy(prepare?: (context: BrowserContext) => unknown): Promise<Copy> {
  const built = process.env.SITE_FOLDER ?? 'dist';
  const folder = mkdtempSync(join(tmpdir(), 'offline-'));
  cpSync(built, folder, { recursive: true });
  let site: Served | undefined = await serve(folder);
  const { origin } = site;
  const browser = await chromium.connect(inject('browser'));
  const context = await browser.newContext({
    baseURL: origin,
    viewport: { width: 1366, height: 768 },
    locale: 'en-GB',
    serviceWorkers: 'allow',
  });
  const unplug = async () => {
    await site?.close();
    site = undefined;
  };
  onTestFinished(async () => {
    await context.close();
    await browser.close();
    await unplug();
    rmSync(folder, { recursive: true });
  });
  context.setDefaultTimeout(30_000);
  await prepare?.(context);
  const page = await context.newPage();
  await page.goto('/');
  return { folder, page, unplug };
}

/** Waits until the whole site is kept. */
export const kept = (page: Page): Promise<unknown> =>
  page.evaluate(() => navigator.serviceWorker.ready.then((registration) => registration.active !== null));
