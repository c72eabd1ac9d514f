import { expect, test } from 'vitest';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP } from './support/job.ts';
import { sidewaysScroll, smallTargets } from './support/measure.ts';

test.each([
  '/',
  '/jobs/',
  '/lessons/',
  '/lessons/follow-the-call/',
  '/glossary/',
  '/systems/',
  '/systems/unvented-three-port/',
  '/parts/',
  '/parts/mid-position-valve/',
  '/search/?q=valve',
  '/cautions/',
  '/how-it-judges/',
  '/calculators/',
  '/calculators/discharge-pipe/',
  '/what-if/',
  '/what-if/unvented-three-port/',
  '/lessons/what-if-it-fails/',
])(
  '%s is clean for axe in both themes, has large enough targets and never scrolls sideways',
  async (path) => {
    const page = await openPage({ path, ...LAPTOP, reducedMotion: true });
    if (path.includes('?q='))
      await page.getByRole('list', { name: 'Results' }).getByRole('link').first().waitFor();
    await seeNoViolation(page, 'wide');
    expect(await sidewaysScroll(page), 'wide').toBe(0);
    for (const width of [360, 320]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await sidewaysScroll(page), `${width} px`).toBe(0);
      expect(await smallTargets(page), `${width} px`).toEqual([]);
    }
    await seeNoViolation(page, 'narrow');
  },
);
