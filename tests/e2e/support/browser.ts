import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, inject, onTestFinished } from 'vitest';

/** How to open a page. */
export type Opening = {
  /** The page's address on the site, from the first slash. */
  readonly path: string;
  /** The width and height of the window in CSS pixels. A desk's screen when left out. */
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  /** True for a phone or tablet: touch input and a mobile viewport. */
  readonly touch?: boolean;
  readonly reducedMotion?: boolean;
  /** False for a browser with scripts switched off. */
  readonly scripts?: boolean;
  /** What to prepare before the page loads: things kept from an earlier visit, a watch on its requests. */
  readonly prepare?: (context: BrowserContext) => unknown;
  /** Complaints that the test expects, such as the 404 of a missing page. */
  readonly expected?: RegExp;
};

let connecting: Promise<Browser> | undefined;

afterAll(async () => {
  await (await connecting)?.close();
  connecting = undefined;
});

/** The address of the site under test, without a slash at the end. */
export const siteOrigin = (): string => inject('origin');

/** Keeps a list of what no page may do: ask another site for anything, log an error or break its own policy. */
async function listen(context: BrowserContext): Promise<string[]> {
  const origin = siteOrigin();
  const complaints: string[] = [];
  context.on('request', (request) => {
    const url = new URL(request.url());
    const isNetwork = !['data:', 'blob:'].includes(url.protocol);
    if (isNetwork && url.origin !== origin) complaints.push(`request to another site: ${request.url()}`);
  });
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on('weberror', (error) => complaints.push(`uncaught: ${error.error().message}`));
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} blocked ${event.blockedURI}`);
    });
  });
  return complaints;
}

/**
 * Opens a page of the built site in a browser profile of its own. Call it inside a test: when the test ends the page
 * is closed, and the test fails if the page asked another site for anything, logged an error or broke its own policy.
 */
export async function openPage(opening: Opening): Promise<Page> {
  const {
    path,
    width = 1280,
    height = 800,
    theme = 'light',
    touch = false,
    reducedMotion,
    scripts = true,
    prepare,
    expected,
  } = opening;
  connecting ??= chromium.connect(inject('browser'));
  const context = await (await connecting).newContext({
    baseURL: siteOrigin(),
    viewport: { width, height },
    colorScheme: theme,
    hasTouch: touch,
    isMobile: touch,
    reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
    javaScriptEnabled: scripts,
    locale: 'en-GB',
    // What is kept for offline is tried by itself: support/offline.ts.
    serviceWorkers: 'block',
  });
  const complaints = await listen(context);
  onTestFinished(async () => {
    await context.close();
    const unexpected = complaints.filter((words) => !expected?.test(words));
    if (unexpected.length > 0) throw new Error(`${path} is not clean:\n${unexpected.join('\n')}`);
  });
  context.setDefaultTimeout(15_000);
  await prepare?.(context);
  const page = await context.newPage();
  await page.goto(path);
  return page;
}
