import { expect, test } from 'vitest';
import { seeNoViolation } from './support/axe.ts';
import { choose, LAPTOP, openJob, PHONE, rightWires, type Wire } from './support/job.ts';
import { judgeButton, verdict } from './support/verdict.ts';

const right = rightWires();
const bypassed: readonly Wire[] = [...right, ['strip/6', 'strip/7']];

test.each([
  ['a laptop', LAPTOP],
  ['a phone', PHONE],
])(
  'axe finds nothing on the wiring page on %s, bare, wired or rejected, in either theme',
  async (_, size) => {
    const bare = await openJob({ ...size, reducedMotion: true });
    await seeNoViolation(bare, 'bare');
    const page = await openJob({ ...size, wires: bypassed, reducedMotion: true });
    await page.locator('[data-input="supply"]').click();
    await seeNoViolation(page, 'wired and live');
    await judgeButton(page).click();
    await verdict(page).waitFor();
    await seeNoViolation(page, 'rejected');
    for (const question of ['Where do I look?', 'What is broken?', 'What do I compare?'])
      await page.getByRole('button', { name: question }).click();
    await page.getByRole('button', { name: 'All states' }).click();
    await seeNoViolation(page, 'all states');
  },
);

test.each([
  ['a laptop', LAPTOP],
  ['a phone', PHONE],
])('axe finds nothing in the other views, once accepted, and in the comparison on %s', async (_, size) => {
  const page = await openJob({ ...size, wires: right, reducedMotion: true });
  await judgeButton(page).click();
  await verdict(page).waitFor();
  for (const view of ['Table', 'Strip', 'Board'] as const) {
    await choose(page, view);
    await seeNoViolation(page, `accepted, ${view}`);
  }
  await page.getByRole('button', { name: /Compare with/ }).click();
  await page.getByRole('dialog').getByRole('heading', { level: 3 }).first().waitFor();
  await seeNoViolation(page, 'comparison');
});

test('The verdict is told to a screen reader without moving the focus', async () => {
  const page = await openJob({ wires: bypassed });
  await judgeButton(page).focus();
  await page.keyboard.press('Enter');
  await verdict(page).waitFor();
  expect(await judgeButton(page).evaluate((button) => button === document.activeElement)).toBe(true);
  const isTold = await verdict(page).evaluate(
    (heading) => heading.closest('[aria-live], [role="status"]') !== null,
  );
  expect(isTold).toBe(true);
});
