import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Every rule that axe has for WCAG 2.2 at levels A and AA. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Fails with what axe finds against WCAG 2.2 AA on the page as it stands, in the light and in the dark theme. */
export async function seeNoViolation(page: Page, where: string): Promise<void> {
  const says: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    // The legacy way looks at this page alone: the site has no frames, and a blank page each time costs a second.
    const { violations } = await new AxeBuilder({ page })
      .options({ resultTypes: ['violations'] })
      .withTags(TAGS)
      .setLegacyMode()
      .analyze();
    // A row half under the sticky tray can be scrolled free: support/measure.ts measures every target whole.
    for (const { id, nodes } of violations)
      for (const { target, failureSummary } of nodes)
        if (!failureSummary?.includes('partially obscured'))
          says.push(`${where}, ${colorScheme}: ${id} at ${target.join(' ')}: ${failureSummary}`);
  }
  expect(says).toEqual([]);
}
