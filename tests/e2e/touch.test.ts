import { expect, test } from 'vitest';
import { keptWires, keysOf, openJob, PHONE, rightWires, terminal } from './support/job.ts';
import { fingerWire, tapWire } from './support/touch.ts';
import { BREAKS, judgeButton, seeAccepted, seeRejected } from './support/verdict.ts';

// Part by part, as one works through the tray.
const right = rightWires().toSorted();

test('A learner wires the whole job on a phone, by taps and by dragging with a finger, and it is accepted', async () => {
  const page = await openJob(PHONE);
  for (const wire of right.slice(0, 4)) await fingerWire(page, wire);
  expect(await keptWires(page)).toEqual(keysOf(right.slice(0, 4)));
  for (const wire of right.slice(4)) await tapWire(page, wire);
  expect(await keptWires(page)).toEqual(keysOf(right));
  await judgeButton(page).tap();
  await seeAccepted(page, right);
});

test('A finger dragged between two numbers of the strip lays a link', async () => {
  const page = await openJob(PHONE);
  await fingerWire(page, ['strip/2', 'strip/5']);
  await tapWire(page, ['strip/8', 'strip/9']);
  expect(await keptWires(page)).toEqual(['strip/2 strip/5', 'strip/8 strip/9']);
});

test.each(Object.entries(BREAKS))('On a phone with %s, the judge says so and shows it', async (_, how) => {
  const page = await openJob({ ...PHONE, wires: right });
  for (const wire of how.lift) {
    await page
      .locator(`[data-wire="${[...wire].sort().join(' ')}"]`)
      .first()
      .tap();
    await page.getByRole('button', { name: 'Take it out' }).tap();
  }
  for (const wire of how.land) await tapWire(page, wire);
  await judgeButton(page).tap();
  await seeRejected(page, right, how);
  expect(await terminal(page, 'strip/1').isVisible()).toBe(true);
});
