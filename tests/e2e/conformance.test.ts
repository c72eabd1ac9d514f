import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openPage } from './support/browser.ts';
import { pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';

/* One page of each kind that text-pages.test.ts and fit.test.ts do not try, for what no automatic checker can tell. Axe goes through all of them in every-page.test.ts. */
const kinds = [
  '/',
  '/lessons/follow-the-call/',
  '/jobs/three-port/',
  '/callouts/cold-showers/',
  '/practice/',
  '/bench/',
  '/drawings/three-port/',
  '/aid/',
  '/coursework/',
  '/mark-book/',
  '/author/coursework/',
  '/paper/three-port/',
  '/about/accessibility/',
  '/guides/tutors/',
];

/** WCAG 2.2, criterion 1.4.12: line height 1.5, paragraphs 2, letters 0.12 and words 0.16 times the size of the text. */
const SPACING = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-bottom: 2em !important; }`;

/** Words that are cut off: in a box with hidden overflow that is smaller than what is in it. */
const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main *, header *, footer *')].flatMap((element) => {
      const { overflowX, overflowY, clipPath, textOverflow, display, webkitLineClamp } =
        getComputedStyle(element);
      const text = element.textContent?.trim() ?? '';
      if (text === '' || clipPath !== 'none' || textOverflow === 'ellipsis' || display === 'inline')
        return [];
      // The first lines of what stands in full on the page that it leads to.
      if (webkitLineClamp !== 'none' && element.closest('a, li')) return [];
      if (element.closest('svg') || !element.checkVisibility() || element.clientHeight < 2) return [];
      const past =
        (overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 2) ||
        (overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 2);
      return past ? [`${element.tagName.toLowerCase()}.${element.className}: ${text.slice(0, 40)}`] : [];
    }),
  );

/** Puts styles into the page in a way that its policy lets through. */
const restyle = (page: Page, css: string): Promise<void> =>
  page.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }, css);

describe.each(kinds)('%s', (path) => {
  test('reads at 320 px, with wide spacing and at twice the size, with large enough targets', async () => {
    const page = await openPage({ path, width: 320, height: 256, reducedMotion: true });
    await page.waitForLoadState('networkidle');
    // 1.4.10: 1280 px at 400 % is 320 px.
    expect(await sidewaysScroll(page), 'at 320 px').toBe(0);
    expect(await pastTheSides(page), 'at 320 px').toEqual([]);
    expect(await smallTargets(page), 'at 320 px').toEqual([]);
    await page.setViewportSize({ width: 1280, height: 800 });
    await restyle(page, SPACING);
    expect(await sidewaysScroll(page), 'with wide spacing').toBe(0);
    expect(await cutOff(page), 'with wide spacing').toEqual([]);
    // 1.4.4: text at 200 %.
    await restyle(page, ':root { font-size: 212.5% !important; }');
    expect(await cutOff(page), 'at twice the size').toEqual([]);
  });

  test('is gone through with Tab: always in sight, always marked, and out at the end', async () => {
    const page = await openPage({ path, width: 1280, height: 640, reducedMotion: true });
    await page.waitForLoadState('networkidle');
    const address = page.url();
    const troubles: string[] = [];
    let isOut = false;
    for (let press = 0; press < 45 && !isOut; press++) {
      await page.keyboard.press('Tab');
      const found = await page.evaluate(() => {
        const element = document.activeElement;
        if (!element || element === document.body) return undefined;
        const name = element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 40) ?? '';
        const { left, top, right, bottom } = element.getBoundingClientRect();
        const [x1, x2] = [Math.max(left, 0), Math.min(right, innerWidth)];
        const [y1, y2] = [Math.max(top, 0), Math.min(bottom, innerHeight)];
        // 2.4.11: not hidden whole. Nine points of it are looked at.
        const isSeen =
          x2 > x1 &&
          y2 > y1 &&
          [0.1, 0.5, 0.9].some((a) =>
            [0.1, 0.5, 0.9].some((b) => {
              const top = document.elementFromPoint(x1 + a * (x2 - x1), y1 + b * (y2 - y1));
              return (
                top !== null &&
                (element.contains(top) || top.contains(element) || element.closest('label')?.contains(top))
              );
            }),
          );
        // The ring is drawn by the element, by the box around it, or in a drawing by a shape inside it.
        const probe = document.body.appendChild(document.createElement('span'));
        probe.style.color = 'var(--focus)';
        const colour = getComputedStyle(probe).color;
        probe.remove();
        const around = [element, element.parentElement, element.parentElement?.parentElement];
        const isMarked =
          around.some((one) => {
            const style = one && getComputedStyle(one);
            return style && style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2;
          }) ||
          [element, ...element.querySelectorAll('svg *, circle, rect, path')].some(
            (shape) =>
              shape instanceof SVGElement &&
              [getComputedStyle(shape).stroke, getComputedStyle(shape).fill].includes(colour),
          );
        return { name: `${element.tagName.toLowerCase()} ${name}`, isSeen, isMarked };
      });
      if (!found) isOut = press > 3;
      else if (!found.isSeen) troubles.push(`out of sight: ${found.name}`);
      else if (!found.isMarked) troubles.push(`not marked: ${found.name}`);
    }
    expect(troubles).toEqual([]);
    // 3.2.1: focus alone leads nowhere.
    expect(page.url()).toBe(address);
  });
});

test.each(['/about/privacy/', '/cautions/', '/guides/', '/'])(
  'Tab comes out of %s at its end (2.1.2)',
  async (path) => {
    const page = await openPage({ path });
    const count = await page.locator('a[href], button, input, summary').count();
    let isOut = false;
    for (let press = 0; press <= count + 5 && !isOut; press++) {
      await page.keyboard.press('Tab');
      isOut = press > 3 && (await page.evaluate(() => document.activeElement === document.body));
    }
    expect(isOut).toBe(true);
  },
);

test.each(['/jobs/three-port/', '/drawings/three-port/', '/lessons/follow-the-call/'])(
  'In forced colours %s keeps the colours of cores, the edges of buttons and a mark on the focus',
  async (path) => {
    const page = await openPage({ path, reducedMotion: true });
    await page.emulateMedia({ forcedColors: 'active' });
    await page.waitForLoadState('networkidle');
    const found = await page.evaluate(() => ({
      cores: [...document.querySelectorAll('.wiring .pin, .wiring .core')].map(
        (core) => getComputedStyle(core).forcedColorAdjust,
      ),
      flat: [...document.querySelectorAll<HTMLElement>('main .btn')]
        .filter((button) => button.checkVisibility())
        .filter((button) => Number.parseFloat(getComputedStyle(button).borderTopWidth) < 1)
        .map((button) => button.textContent?.trim()),
    }));
    expect(found.flat).toEqual([]);
    expect(new Set(found.cores).size, 'all cores alike').toBeLessThanOrEqual(1);
    if (found.cores.length > 0) expect(found.cores[0]).toBe('none');
    await page.keyboard.press('Tab');
    const outline = await page.evaluate(
      () => getComputedStyle(document.activeElement as Element).outlineStyle,
    );
    expect(outline).not.toBe('none');
  },
);

test('A notice and the count of a filter are told without moving the focus (4.1.3)', async () => {
  const page = await openPage({ path: '/search/' });
  await page.locator('#q').fill('valve');
  await expect.poll(() => page.getByRole('status').first().textContent()).toMatch(/\d/);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('q');
  expect(await page.locator('#notice').getAttribute('aria-live')).toBe('polite');
});
