import type { Page } from 'playwright-core';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Drags one finger from a point of the window to another, as the browser gets it from a touch screen. */
export async function fingerDrag(page: Page, start: Point, end: Point): Promise<void> {
  const tools = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: Point[]) =>
    tools.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', [start]);
  for (let step = 1; step <= 8; step++) {
    const at = (p: 'x' | 'y') => start[p] + ((end[p] - start[p]) * step) / 8;
    await send('touchMove', [{ x: at('x'), y: at('y') }]);
  }
  await send('touchEnd', []);
  await tools.detach();
}
