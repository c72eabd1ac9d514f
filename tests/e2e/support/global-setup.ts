import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { serve } from '../../../tools/serve.ts';
import { chromiumFlags, findChromium } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The address of the site under test, without a slash at the end. */
    origin: string;
    /** Where the one browser that every test file shares can be reached. */
    browser: string;
  }
}

/** Serves the built site and starts the browser, once for the whole run. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  // SITE_FOLDER tests a site that was built elsewhere.
  const dist = process.env.SITE_FOLDER ?? fileURLToPath(new URL('../../../dist', import.meta.url));
  if (!existsSync(`${dist}/index.html`))
    throw new Error(`There is no built site in ${dist}. Run npm run build first.`);
  const site = await serve(dist);
  const browser = await chromium.launchServer({
    executablePath: findChromium(),
    args: [...chromiumFlags],
    host: '127.0.0.1',
  });
  project.provide('origin', site.origin);
  project.provide('browser', browser.wsEndpoint());
  return async () => {
    await browser.close();
    await site.close();
  };
}
