import type { Page } from 'playwright-core';
import type { Wire } from './job.ts';

const known = new WeakMap<Page, Promise<string[][]>>();

/** Names of the board's leads and terminals, row by row from the top, each row from the left. */
function rowsOf(page: Page): Promise<string[][]> {
  const rows = known.get(page) ?? readRows(page);
  known.set(page, rows);
  return rows;
}

async function readRows(page: Page): Promise<string[][]> {
  const spots = await page.locator('svg [data-terminal]').evaluateAll((terminals) =>
    terminals.map((terminal) => {
      const { x, width, y, height } = terminal.getBoundingClientRect();
      return { id: (terminal as SVGElement).dataset.terminal ?? '', x: x + width / 2, y: y + height / 2 };
    }),
  );
  const joint = spots.filter(({ id }) => id.startsWith('strip/'));
  const middle = joint[0]?.y ?? 0;
  const leads = spots.filter(({ id }) => !id.startsWith('strip/'));
  return [leads.filter(({ y }) => y < middle), joint, leads.filter(({ y }) => y > middle)].map((row) =>
    row.sort((a, b) => a.x - b.x).map(({ id }) => id),
  );
}

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => (document.activeElement as SVGElement | null)?.dataset.terminal ?? '');

/** Presses Tab until the focus is on what the test looks for. */
export async function tabTo(page: Page, isThere: () => Promise<boolean>, key = 'Tab'): Promise<void> {
  for (let press = 0; press < 60; press++) {
    if (await isThere()) return;
    await page.keyboard.press(key);
  }
  throw new Error('60 presses of Tab did not get there.');
}

/** Moves the focus over the board to a lead or terminal, with the arrow keys alone. */
export async function arrowTo(page: Page, id: string): Promise<void> {
  const rows = await rowsOf(page);
  const rowOf = (name: string) => rows.findIndex((row) => row.includes(name));
  const goal = rowOf(id);
  if (rowOf(await focused(page)) < 0) await tabTo(page, async () => rowOf(await focused(page)) >= 0);
  const up = rowOf(await focused(page)) - goal;
  for (let step = 0; step < Math.abs(up); step++) await page.keyboard.press(up > 0 ? 'ArrowUp' : 'ArrowDown');
  const places = rows[goal] ?? [];
  const right = places.indexOf(id) - places.indexOf(await focused(page));
  for (let step = 0; step < Math.abs(right); step++)
    await page.keyboard.press(right > 0 ? 'ArrowRight' : 'ArrowLeft');
  if ((await focused(page)) !== id)
    throw new Error(`The arrow keys led to ${await focused(page)}, not ${id}.`);
}

/** Joins two ends on the board with arrow keys and Enter. */
export async function keyWire(page: Page, wire: Wire): Promise<void> {
  for (const end of wire) {
    await arrowTo(page, end);
    await page.keyboard.press('Enter');
  }
}
