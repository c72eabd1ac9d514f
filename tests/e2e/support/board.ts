import type { Locator, Page } from 'playwright-core';
import { terminal, type Wire } from './job.ts';

async function centre(target: Locator): Promise<[number, number]> {
  const box = await target.boundingBox();
  if (!box) throw new Error(`${target} is not on the page`);
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** Drags a wire from one lead or terminal to another with the mouse, through real moves of the pointer. */
export async function dragWire(page: Page, [from, to]: Wire): Promise<void> {
  const [x, y] = await centre(terminal(page, from));
  await page.mouse.move(x, y);
  await page.mouse.down();
  // Where the other end is once the wire is in hand: nothing may jump away from under the pointer.
  const [toX, toY] = await centre(terminal(page, to));
  await page.mouse.move(toX, toY, { steps: 3 });
  await page.mouse.up();
}

/** Clicks a wire on the board at a point where it lies open to the pointer. */
export async function pickWire(page: Page, nth: number): Promise<void> {
  const point = await page
    .locator('.wire')
    .nth(nth)
    .evaluate((wire) => {
      const path = wire.querySelector('path');
      const matrix = path?.getScreenCTM();
      if (!path || !matrix) return undefined;
      for (let part = 0.1; part < 1; part += 0.02) {
        const { x, y } = path.getPointAtLength(path.getTotalLength() * part).matrixTransform(matrix);
        if (wire.contains(document.elementFromPoint(x, y))) return [x, y] as const;
      }
      return undefined;
    });
  if (!point) throw new Error('The wire lies nowhere open to the pointer.');
  await page.mouse.click(point[0], point[1]);
}
