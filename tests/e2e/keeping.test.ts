import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { dragWire, pickWire } from './support/board.ts';
import { keptWires, keysOf, openJob, ready, rightWires, said, terminal, wireKey } from './support/job.ts';

const right = rightWires();
const all = keysOf(right);
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

test('Undo and redo go back and forth through the wires, by button and by Ctrl+Z', async () => {
  const page = await openJob();
  const keys = right.slice(0, 3).map(wireKey);
  for (const wire of right.slice(0, 3)) await dragWire(page, wire);
  await press(page, 'Undo');
  expect(await keptWires(page)).toEqual(keys.slice(0, 2).sort());
  await page.keyboard.press('Control+z');
  expect(await keptWires(page)).toEqual(keys.slice(0, 1));
  await page.keyboard.press('Control+Shift+Z');
  await press(page, 'Redo');
  expect(await keptWires(page)).toEqual([...keys].sort());
  expect(await page.getByRole('button', { name: 'Redo', exact: true }).isDisabled()).toBe(true);
});

test('Clear takes every wire out, and one undo brings them all back', async () => {
  const page = await openJob({ wires: right });
  await press(page, 'Clear');
  expect(await keptWires(page)).toEqual([]);
  expect(await said(page).textContent()).toContain('Undo brings them back');
  await press(page, 'Undo');
  expect(await keptWires(page)).toEqual(all);
});

test('A wire clicked on the board is named and can be taken out', async () => {
  const page = await openJob({ wires: right });
  await pickWire(page, right.length - 5);
  await press(page, 'Take it out');
  const left = await keptWires(page);
  expect(left.length).toBe(right.length - 1);
  expect(all).toEqual(expect.arrayContaining(left));
});

test('A reload brings the wiring back', async () => {
  const page = await openJob();
  for (const wire of right.slice(0, 5)) await dragWire(page, wire);
  await page.reload();
  await ready(page);
  const count = await page.locator('.wire').count();
  expect(count).toBe(5);
  expect(await keptWires(page)).toEqual(keysOf(right.slice(0, 5)));
});

/** Presses Link and gives the hash of the link that was copied. */
async function linkOf(page: Page): Promise<string> {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await press(page, 'Link');
  await expect.poll(() => said(page).textContent()).toMatch(/link/i);
  return new URL(await page.evaluate(() => navigator.clipboard.readText())).hash;
}

test('A shared link carries the wiring to a browser that has never seen the page', async () => {
  const hash = await linkOf(await openJob({ wires: right }));
  const other = await openJob({ hash });
  expect(await keptWires(other)).toEqual(all);
  expect(new URL(other.url()).hash).toBe('');
});

test('A link opened over wires of one’s own can be undone', async () => {
  const hash = await linkOf(await openJob({ wires: right }));
  const mine = right.slice(0, 2);
  const page = await openJob({ hash, wires: mine });
  expect(await keptWires(page)).toEqual(all);
  await press(page, 'Undo');
  expect(await keptWires(page)).toEqual(keysOf(mine));
});

test('A wire laid after pressing Link is still there after a reload', async () => {
  const page = await openJob({ wires: right.slice(1) });
  await linkOf(page);
  await dragWire(page, right[0] ?? ['', '']);
  await page.reload();
  await ready(page);
  expect(await keptWires(page)).toEqual(all);
});

test.each(['#w=AAAA', '#w=AQ', `#w=${'A'.repeat(5000)}`])(
  'A damaged link says so and loses nothing (%.12s)',
  async (hash) => {
    const page = await openJob({ hash, wires: right });
    expect(await said(page).textContent()).toMatch(/link/i);
    expect(await keptWires(page)).toEqual(all);
    expect(await page.locator('.wire').count()).toBe(right.length);
  },
);

test('What was kept but is damaged does not stop the page', async () => {
  const page = await openJob({
    prepare: (context) =>
      context.addInitScript(() => {
        if (location.protocol === 'about:') return;
        localStorage.setItem(
          'switched-live/wiring/1/unvented-three-port',
          '{"wires":[["spur/L","nowhere/9"],7',
        );
      }),
  });
  expect(await page.locator('.wire').count()).toBe(0);
  await dragWire(page, ['spur/L', 'strip/1']);
  expect(await keptWires(page)).toEqual(['spur/L strip/1']);
});

test('A device with no room left says that the wires are not saved', async () => {
  const page = await openJob();
  await page.evaluate(() => {
    for (let size = 2 ** 22; size >= 1; size = Math.floor(size / 2))
      try {
        for (let k = 0; ; k++) localStorage.setItem(`filler ${size} ${k}`, 'x'.repeat(size));
      } catch {
        // Full at this size: go on with smaller pieces.
      }
  });
  await dragWire(page, ['spur/L', 'strip/1']);
  await expect.poll(() => said(page).textContent()).toMatch(/full.*not\s+saved/is);
  expect(await page.locator('.wire').count()).toBe(1);
});

test('A browser that keeps nothing says that the wires are not saved, and the job still works', async () => {
  const page = await openJob({
    prepare: (context) =>
      context.addInitScript(() => {
        Object.defineProperty(window, 'localStorage', {
          get: () => {
            throw new DOMException('The user has barred storage.', 'SecurityError');
          },
        });
      }),
  });
  await dragWire(page, ['spur/L', 'strip/1']);
  await expect.poll(() => said(page).textContent()).toMatch(/keeps nothing.*not\s+saved/is);
  expect(await terminal(page, 'strip/1').getAttribute('aria-label')).toContain('Fused spur L');
});
