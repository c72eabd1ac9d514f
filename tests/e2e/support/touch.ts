import type { Page } from 'playwright-core';
import { jobOf, terminal, WHOLE, type Wire } from './job.ts';

/** The name of the part that a lead belongs to, as its button in the tray shows it; undefined for the strip. */
function buttonOf(end: string): string | undefined {
  const part = end.slice(0, end.indexOf('/'));
  return part === 'strip' ? undefined : jobOf(WHOLE).spec.parts[part]?.short;
}

/** Brings the part of a lead to the top of the tray. */
async function unfold(page: Page, end: string): Promise<void> {
  const short = buttonOf(end);
  if (!short) return;
  const button = page.getByRole('group', { name: 'Parts' }).getByRole('button', { name: short });
  if ((await button.getAttribute('aria-pressed')) !== 'true') await button.tap();
}

/** Joins two ends in the strip view: tap one, tap the other. */
export async function tapWire(page: Page, wire: Wire): Promise<void> {
  for (const end of wire) {
    await unfold(page, end);
    await terminal(page, end).tap();
  }
}

/** Drags a wire with one finger, as the browser gets it from a touch screen. */
export async function fingerWire(page: Page, [from, to]: Wire): Promise<void> {
  await unfold(page, from);
  const source = terminal(page, from);
  const target = terminal(page, to);
  await target.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const [a, b] = [await source.boundingBox(), await target.boundingBox()];
  if (!a || !b) throw new Error('An end of the wire is not on the page.');
  const start = { x: a.x + a.width / 2, y: a.y + a.height / 2 };
  const end = { x: b.x + b.width / 2, y: b.y + b.height / 2 };
  const tools = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
    tools.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', [start]);
  for (let step = 1; step <= 8; step++) {
    const at = (p: 'x' | 'y') => start[p] + ((end[p] - start[p]) * step) / 8;
    await send('touchMove', [{ x: at('x'), y: at('y') }]);
  }
  // The finger rests before it lifts: a flick would set off a fling, which the next tap only stops.
  await page.waitForTimeout(120);
  await send('touchMove', [end]);
  await send('touchEnd', []);
  await tools.detach();
}
