import type { Page } from 'playwright-core';

/** Pixels by which the page can be scrolled sideways. */
export const sidewaysScroll = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What of these elements lies outside the window as it stands, by name. */
export const outsideWindow = (page: Page, selector: string): Promise<string[]> =>
  page.locator(selector).evaluateAll((elements) =>
    elements.flatMap((element) => {
      const { top, left, bottom, right } = element.getBoundingClientRect();
      const inside = top >= 0 && left >= 0 && bottom <= innerHeight && right <= innerWidth;
      const name = element.getAttribute('data-terminal') ?? element.textContent?.trim().slice(0, 40);
      return inside
        ? []
        : [`${name}: ${Math.round(left)},${Math.round(top)} to ${Math.round(right)},${Math.round(bottom)}`];
    }),
  );

/** What lies past the sides of the window without a scroller of its own around it. */
export const pastTheSides = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      (/auto|scroll/.test(getComputedStyle(element).overflowX) || scrolls(element.parentElement));
    return [
      ...document.querySelectorAll('main button, main a, main select, main p, main h1, main h2'),
    ].flatMap((element) => {
      const { left, right, width } = element.getBoundingClientRect();
      const past = width > 1 && (left < -0.5 || right > document.documentElement.clientWidth + 0.5);
      return past && !scrolls(element.parentElement)
        ? [`${element.textContent?.trim().slice(0, 40)}: ${Math.round(left)} to ${Math.round(right)}`]
        : [];
    });
  });

/**
 * Targets under 24 px that have no 24 px circle to themselves, by name. A link inside a sentence is exempt.
 * Source: WCAG 2.2, success criterion 2.5.8 (AA).
 */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const targets = [
      ...document.querySelectorAll(
        'a[href], button, select, summary, input, [role="button"], [role="switch"]',
      ),
    ].flatMap((element) => {
      // A box and its label are one target.
      const { x, y, width, height } = (element.closest('label') ?? element).getBoundingClientRect();
      const inSentence = element.matches('a') && getComputedStyle(element).display === 'inline';
      return width > 1 && height > 1 && !inSentence && element.checkVisibility()
        ? [{ element, x: x + width / 2, y: y + height / 2, width, height }]
        : [];
    });
    return targets.flatMap((one) => {
      if (one.width >= 23.5 && one.height >= 23.5) return [];
      const crowded = targets.some((two) => two !== one && Math.hypot(one.x - two.x, one.y - two.y) < 23.5);
      const name = one.element.getAttribute('aria-label') ?? one.element.textContent?.trim() ?? '';
      return crowded ? [`${name.slice(0, 50)}: ${one.width.toFixed(1)} by ${one.height.toFixed(1)}`] : [];
    });
  });
