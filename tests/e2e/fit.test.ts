import { expect, test } from 'vitest';
import { choose, LAPTOP, openJob, PHONE, rightWires, type Wire } from './support/job.ts';
import { outsideWindow, pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';
import { judgeButton, verdict } from './support/verdict.ts';

const right = rightWires();
const bypassed: readonly Wire[] = [...right, ['strip/6', 'strip/7']];
const FACE = '[data-terminal], [data-input], .judge';

test.each([
  ['bare', []],
  ['fully wired', right],
])('On a laptop the %s strip, the switches and Judge are in the window together', async (_, wires) => {
  const page = await openJob({ ...LAPTOP, wires });
  expect(await outsideWindow(page, FACE)).toEqual([]);
});

test('On a laptop the strip, the switches and Judge stay in the window after a rejection', async () => {
  const page = await openJob({ ...LAPTOP, wires: bypassed });
  await judgeButton(page).click();
  await verdict(page).waitFor();
  expect(await page.evaluate(() => scrollY)).toBe(0);
  expect(await outsideWindow(page, FACE)).toEqual([]);
});

test.each([320, 360])('Nothing on the wiring page makes a window of %i px scroll sideways', async (width) => {
  const bare = await openJob({ ...PHONE, width });
  expect(await sidewaysScroll(bare), 'bare').toBe(0);
  expect(await pastTheSides(bare), 'bare').toEqual([]);
  const page = await openJob({ ...PHONE, width, wires: bypassed });
  await judgeButton(page).tap();
  await verdict(page).waitFor();
  for (const view of ['Strip', 'Table', 'Board'] as const) {
    await choose(page, view);
    expect(await sidewaysScroll(page), view).toBe(0);
    expect(await pastTheSides(page), view).toEqual([]);
  }
  await page.getByRole('button', { name: 'All states' }).tap();
  expect(await sidewaysScroll(page)).toBe(0);
});

test.each([
  ['a laptop', LAPTOP],
  ['a phone', PHONE],
])(
  'Every target of the wiring page is at least 24 px across, or has the room of one, on %s',
  async (_, size) => {
    const page = await openJob({ ...size, wires: bypassed });
    await judgeButton(page).click();
    await verdict(page).waitFor();
    for (const view of ['Strip', 'Table', 'Board'] as const) {
      await choose(page, view);
      expect(await smallTargets(page), view).toEqual([]);
    }
    await page.getByRole('button', { name: 'All states' }).click();
    expect(await smallTargets(page)).toEqual([]);
  },
);
