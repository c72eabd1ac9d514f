import { globSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CONTRAST, findViolations, WCAG_AA } from './support/axe.ts';
import { openPage } from './support/browser.ts';

/* The pages of the built site, found in its folder: none is listed here, so none can be forgotten. */
const folder = process.env.SITE_FOLDER ?? 'dist';
const all = globSync('**/*.html', { cwd: folder })
  .map((name) => `/${name}`.replace(/index\.html$/, ''))
  .sort();
/** Pages of one template that differ in their numbers only: of these every fourth. */
const ALIKE =
  /^\/(?:(?:paper\/job|paper|stage|jobs|callouts|drawings|what-if|aid)\/[a-z0-9-]+|lessons\/[a-z0-9-]+\/worksheet)\/$/;
const isAlike = (path: string) => ALIKE.test(path);
const alike = all.filter(isAlike);
const paths = all.filter((path) => !isAlike(path) || alike.indexOf(path) % 4 === 0);
/** Pages that one page of the browser goes through, so that a failure costs little and a name says where. */
const TOGETHER = 40;
const stretches = Array.from({ length: Math.ceil(paths.length / TOGETHER) }, (_, k) =>
  paths.slice(k * TOGETHER, (k + 1) * TOGETHER),
);

test('The site has its four hundred pages', () => {
  expect(all.length).toBeGreaterThan(400);
  expect(alike.length).toBeGreaterThan(90);
  expect(all.length - paths.length).toBeLessThan(alike.length);
});

test.each(stretches.map((stretch) => [stretch[0], stretch.at(-1), stretch] as const))(
  'axe finds nothing against WCAG 2.2 AA from %s to %s, in either theme',
  async (first, _, stretch) => {
    const page = await openPage({ path: first ?? '/', reducedMotion: true });
    const says: string[] = [];
    for (const path of stretch) {
      if (path !== first) await page.goto(path);
      const light = await findViolations(page, 'light', WCAG_AA);
      // The elements are the same in the dark; only their colours are others.
      const dark = await findViolations(page, 'dark', CONTRAST);
      says.push(...[...light, ...dark].map((found) => `${path}, ${found}`));
    }
    expect(says).toEqual([]);
  },
  600_000,
);
