import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

type Results = Awaited<ReturnType<AxeBuilder['analyze']>>;
type Rules = { readonly type: 'tag' | 'rule'; readonly values: readonly string[] };

/** Every rule that axe has for WCAG 2.2 at levels A and AA. */
export const WCAG_AA: Rules = {
  type: 'tag',
  values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
};
/** The rule that a theme's colours can break. */
export const CONTRAST: Rules = { type: 'rule', values: ['color-contrast'] };

// The builder sends axe's half a megabyte again for every look, which costs more than the look: here it goes once a page.
const { resolve } = createRequire(import.meta.resolve('@axe-core/playwright'));
const source = readFileSync(resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds on the page as it stands: theme, rule, element and what is wrong, one line each. */
export async function findViolations(page: Page, theme: 'light' | 'dark', runOnly: Rules): Promise<string[]> {
  await page.emulateMedia({ colorScheme: theme });
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  const { violations } = await page.evaluate(
    (options) => (window as unknown as { axe: { run(options: object): Promise<Results> } }).axe.run(options),
    // The site has no frames, and no sound whose length axe would have to fetch.
    { runOnly, resultTypes: ['violations'], iframes: false, preload: false },
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes
      // A row half under the sticky tray can be scrolled free: support/measure.ts measures every target whole.
      .filter(({ failureSummary }) => !failureSummary?.includes('partially obscured'))
      .map(({ target, failureSummary }) => `${theme}: ${id} at ${target.join(' ')}: ${failureSummary}`),
  );
}

/** Fails with what axe finds against WCAG 2.2 AA on the page as it stands, in the light and in the dark theme. */
export async function seeNoViolation(page: Page, where: string): Promise<void> {
  const light = await findViolations(page, 'light', WCAG_AA);
  const dark = await findViolations(page, 'dark', WCAG_AA);
  expect([...light, ...dark].map((says) => `${where}, ${says}`)).toEqual([]);
}
